import { median } from 'simple-statistics';
import { requireSample } from './sample.js';

/** Scales the median absolute deviation to the standard deviation of normal data: 1 / Φ⁻¹(0.75), as usually rounded. */
export const MAD_TO_SD = 1.4826;

export interface MedianAndDeviation {
  readonly median: number;
  /** Median absolute deviation from the median, not scaled. */
  readonly mad: number;
}

/** @throws {TooFewValuesError} for an empty sample */
export function medianAndDeviation(values: readonly number[]): MedianAndDeviation {
  requireSample('Median', values, 1);
  const centre = median([...values]);
  return { median: centre, mad: median(values.map((value) => Math.abs(value - centre))) };
}
