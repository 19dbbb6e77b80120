import { mean, sampleStandardDeviation } from 'simple-statistics';
import { requireSample, varies } from './sample.js';

export interface MeanAndSpread {
  readonly n: number;
  readonly mean: number;
  /** Sample standard deviation, divisor n - 1. */
  readonly sd: number;
  /** Correlation of each value with the one before it; `NaN` where the values do not vary. */
  readonly lag1: number;
}

/**
 * Mean, sample standard deviation and lag-1 autocorrelation.
 *
 * @throws {TooFewValuesError} below two values
 * @see NIST Statistical Reference Datasets, univariate summary statistics
 */
export function meanAndSpread(values: readonly number[]): MeanAndSpread {
  requireSample('Summary', values, 2);
  if (!varies(values)) return { n: values.length, mean: values[0]!, sd: 0, lag1: Number.NaN };
  const centre = mean([...values]);
  let products = 0;
  let squares = 0;
  values.forEach((value, index) => {
    const deviation = value - centre;
    squares += deviation * deviation;
    if (index > 0) products += deviation * (values[index - 1]! - centre);
  });
  return { n: values.length, mean: centre, sd: sampleStandardDeviation([...values]), lag1: products / squares };
}
