import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import { normalQuantile } from '../distribution/quantiles.js';
import { NoSpreadError } from '../errors.js';
import { medianAndDeviation } from '../sample/median-deviation.js';
import { requireSample } from '../sample/sample.js';

/** For n = 2 … 12; index 0 is n = 2. */
const QN_SMALL = [0.399356, 0.99365, 0.51321, 0.84401, 0.6122, 0.85877, 0.66993, 0.87344, 0.72014, 0.88906, 0.75743];
/** For n = 2 … 9; index 0 is n = 2. */
const SN_SMALL = [0.743, 1.851, 0.954, 1.351, 0.993, 1.198, 1.005, 1.131];
const QN_TO_SD = 2.21914;
const SN_TO_SD = 1.1926;

function qnCorrection(n: number): number {
  if (n <= 12) return QN_SMALL[n - 2]!;
  return n % 2 === 1
    ? 1 / (1 + (1.60188 + (-2.1284 - 5.172 / n) / n) / n)
    : 1 / (1 + (3.67561 + (1.9654 + (6.987 - 77 / n) / n) / n) / n);
}

function snCorrection(n: number): number {
  if (n <= 9) return SN_SMALL[n - 2]!;
  return n % 2 === 1 ? n / (n - 0.9) : 1;
}

/**
 * Scale from an order statistic of the pairwise distances, corrected for small samples: no centre needed, half of
 * the data may be wild.
 *
 * @see Rousseeuw & Croux (1993), Alternatives to the median absolute deviation, JASA 88:1273-1283; correction factors
 *   from memory of the authors' reference implementation, confirmed to six digits by the test
 */
export function qnScale(values: readonly number[]): number {
  requireSample('Qn', values, 2);
  const n = values.length;
  const distances: number[] = [];
  for (let i = 1; i < n; i++) for (let j = 0; j < i; j++) distances.push(Math.abs(values[i]! - values[j]!));
  distances.sort((a, b) => a - b);
  const half = Math.floor(n / 2) + 1;
  return qnCorrection(n) * QN_TO_SD * distances[(half * (half - 1)) / 2 - 1]!;
}

/** Scale from the medians of each value's distances to the others, corrected for small samples. @see {@link qnScale} */
export function snScale(values: readonly number[]): number {
  requireSample('Sn', values, 2);
  const n = values.length;
  const highMedian = (of: number[]) => of.sort((a, b) => a - b)[Math.floor(of.length / 2)]!;
  const lowMedian = (of: number[]) => of.sort((a, b) => a - b)[Math.floor((of.length + 1) / 2) - 1]!;
  const inner = values.map((value) => highMedian(values.map((other) => Math.abs(value - other))));
  return snCorrection(n) * SN_TO_SD * lowMedian(inner);
}

/**
 * Location and scale by truncated squares ("tau").
 *
 * @see Maronna & Zamar (2002), Robust estimates of location and dispersion for high-dimensional datasets,
 *   Technometrics 44:307-317
 */
export function tauScale(values: readonly number[], c1 = 4.5, c2 = 3): { location: number; scale: number } {
  requireSample('Tau scale', values, 3);
  const { median: centre, mad } = medianAndDeviation(values);
  if (mad === 0) throw new NoSpreadError('Tau scale', 'Over half of the values are equal: use the median.');
  let weights = 0;
  let sum = 0;
  for (const value of values) {
    const w = Math.max(0, 1 - ((value - centre) / (c1 * mad)) ** 2) ** 2;
    weights += w;
    sum += w * value;
  }
  const location = sum / weights;
  const squares = values.reduce((total, value) => total + Math.min(((value - location) / mad) ** 2, c2 * c2), 0);
  const b = c2 * normalQuantile(0.75);
  const density = Math.exp((-b * b) / 2) / Math.sqrt(2 * Math.PI);
  const expected = 2 * ((1 - b * b) * normalCdf(b, 0, 1) - b * density + b * b) - 1;
  return { location, scale: mad * Math.sqrt(squares / (values.length * expected)) };
}
