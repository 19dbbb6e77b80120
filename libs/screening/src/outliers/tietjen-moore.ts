import { type SeededRandom } from '@archwright/kernel';
import { normalQuantile } from '../distribution/quantiles.js';
import { NoSpreadError } from '../errors.js';
import { meanAndSpread } from '../sample/mean-and-spread.js';
import { quantileOfSorted } from '../sample/quantile.js';
import { requireBetween, requireSample, requireWhole } from '../sample/sample.js';

export interface TietjenMooreTest {
  /** Share of the sum of squares left without the suspects; small when they stand out. */
  readonly statistic: number;
  /** Simulated on normal samples. */
  readonly critical: number;
  /** Positions of the suspects, from 0, ascending; they are outliers when `areOutliers`. */
  readonly suspects: readonly number[];
  readonly areOutliers: boolean;
}

/** Sum of squares about the own mean of the `n - k` values nearest the mean, over that of all; order of distance. */
function shareLeft(values: readonly number[], k: number): { statistic: number; byDistance: number[] } {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const distance = (index: number) => Math.abs(values[index]! - mean);
  const byDistance = values.map((_, index) => index).sort((a, b) => distance(a) - distance(b) || a - b);
  const squares = (of: readonly number[]) => {
    const centre = of.reduce((sum, value) => sum + value, 0) / of.length;
    return of.reduce((sum, value) => sum + (value - centre) ** 2, 0);
  };
  const near = byDistance.slice(0, values.length - k).map((index) => values[index]!);
  return { statistic: squares(near) / squares(values), byDistance };
}

/**
 * Two-sided test for exactly `k` outliers in a normal sample.
 *
 * @param random drives the simulation of the critical value, which repeats for the same seed
 * @param samples normal samples simulated; the critical value's error falls with their square root
 * @see Tietjen & Moore (1972), Some Grubbs-type statistics for the detection of several outliers,
 *   Technometrics 14:583-597; NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.17.2
 */
export function tietjenMoore(
  values: readonly number[],
  k: number,
  { alpha = 0.05, random, samples = 100_000 }: { alpha?: number; random: SeededRandom; samples?: number },
): TietjenMooreTest {
  requireSample('Tietjen-Moore', values, 5);
  requireWhole('Tietjen-Moore', 'number of outliers', k, 1, Math.floor(values.length / 2));
  requireBetween('Tietjen-Moore', 'alpha', alpha, 0, 1);
  if (meanAndSpread(values).sd === 0) throw new NoSpreadError('Tietjen-Moore');
  const { statistic, byDistance } = shareLeft(values, k);
  const normal = () => normalQuantile((random.nextUint32() + 0.5) / 0x1_0000_0000);
  const simulated = Array.from({ length: samples }, () => shareLeft(Array.from(values, normal), k).statistic);
  const critical = quantileOfSorted(
    simulated.sort((a, b) => a - b),
    alpha,
    7,
  );
  return {
    statistic,
    critical,
    suspects: byDistance.slice(values.length - k).sort((a, b) => a - b),
    areOutliers: statistic < critical,
  };
}
