import { MAD_TO_SD, medianAndDeviation } from '../sample/median-deviation.js';
import { NoSpreadError, OptionError } from '../errors.js';
import { requirePositive, requireSample, requireWhole, varies } from '../sample/sample.js';

export interface HampelFilter {
  /** Positions, from 0. */
  readonly flagged: readonly number[];
  /** The series with flagged values replaced by the median of their window. */
  readonly filtered: readonly number[];
}

/**
 * Values of a series that stand out of their neighbourhood; the window is cut at the ends.
 *
 * @param halfWindow neighbours on each side
 * @param threshold in scaled median absolute deviations of the window
 * @param resolution a deviation up to this, in the values' unit, is never flagged: a window may hold equal readings
 * @throws {NoSpreadError} when all values are equal and no resolution is given
 * @see Hampel (1974), The influence curve and its role in robust estimation, JASA 69:383-393;
 *   Davies & Gather (1993), The identification of multiple outliers, JASA 88:782-792
 */
export function hampelFilter(
  values: readonly number[],
  {
    halfWindow = 3,
    threshold = 3,
    resolution = 0,
  }: { halfWindow?: number; threshold?: number; resolution?: number } = {},
): HampelFilter {
  requireSample('Hampel', values, 3);
  requireWhole('Hampel', 'half window', halfWindow, 1, values.length);
  requirePositive('Hampel', 'threshold', threshold);
  if (!(resolution >= 0)) throw new OptionError('Hampel', 'resolution', resolution, 'a number from 0 on');
  if (!varies(values) && resolution === 0)
    throw new NoSpreadError('Hampel', 'Give the resolution of the instrument, or more varied data.');
  const flagged: number[] = [];
  const filtered = values.map((value, index) => {
    const window = values.slice(Math.max(0, index - halfWindow), index + halfWindow + 1);
    const { median, mad } = medianAndDeviation(window);
    if (Math.abs(value - median) <= Math.max(threshold * MAD_TO_SD * mad, resolution)) return value;
    flagged.push(index);
    return median;
  });
  return { flagged, filtered };
}
