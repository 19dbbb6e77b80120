import { mean } from 'simple-statistics';
import { NoSpreadError } from '../errors.js';
import { requireSample } from '../sample/sample.js';

/** Mean range of two standard normal values: 2/√π. */
export const D2_OF_PAIRS = 2 / Math.sqrt(Math.PI);
/** Upper factor for the range of two, from {@link chartConstants}; written out because it never changes. */
const D4_OF_PAIRS = 3.26653191929482;

export interface IndividualsChart {
  readonly mean: number;
  readonly meanMovingRange: number;
  readonly sigma: number;
  readonly upper: number;
  readonly lower: number;
  readonly movingRangeUpper: number;
  /** Positions, from 0, beyond a limit. */
  readonly outside: readonly number[];
  /** Positions whose distance from the value before exceeds its limit. */
  readonly movingRangeOutside: readonly number[];
}

/**
 * Chart of single values with limits from the moving range of two.
 *
 * @throws {NoSpreadError} when no value differs from the one before
 * @see NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2
 */
export function individualsChart(values: readonly number[]): IndividualsChart {
  requireSample('Individuals chart', values, 3);
  const ranges = values.slice(1).map((value, index) => Math.abs(value - values[index]!));
  const centre = mean([...values]);
  const meanMovingRange = mean(ranges);
  if (meanMovingRange === 0) throw new NoSpreadError('Individuals chart');
  const sigma = meanMovingRange / D2_OF_PAIRS;
  const upper = centre + 3 * sigma;
  const lower = centre - 3 * sigma;
  const movingRangeUpper = D4_OF_PAIRS * meanMovingRange;
  return {
    mean: centre,
    meanMovingRange,
    sigma,
    upper,
    lower,
    movingRangeUpper,
    outside: values.flatMap((value, index) => (value > upper || value < lower ? [index] : [])),
    movingRangeOutside: ranges.flatMap((range, index) => (range > movingRangeUpper ? [index + 1] : [])),
  };
}
