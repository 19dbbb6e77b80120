import { OptionError } from '../errors.js';
import { requirePositive, requireSample } from '../sample/sample.js';

export interface EwmaDesign {
  readonly target: number;
  readonly sigma: number;
  /** Weight of the newest value, in (0, 1]. */
  readonly lambda: number;
  /** Width of the limits in standard deviations of the average; its price is {@link ewmaRunLength}. */
  readonly width: number;
}

export interface Ewma {
  readonly averages: readonly number[];
  /** Limits that widen from the first value on. */
  readonly upper: readonly number[];
  readonly lower: readonly number[];
  readonly upperAsymptotic: number;
  readonly lowerAsymptotic: number;
  /** Positions, from 0, beyond the widening limits. */
  readonly signals: readonly number[];
}

/**
 * Exponentially weighted moving average.
 *
 * @see Roberts (1959), Control chart tests based on geometric moving averages, Technometrics 1:239-250;
 *   NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.4
 */
export function ewma(values: readonly number[], { target, sigma, lambda, width }: EwmaDesign): Ewma {
  requireSample('EWMA', values, 1);
  if (!(lambda > 0 && lambda <= 1)) throw new OptionError('EWMA', 'lambda', lambda, 'a number above 0, at most 1');
  requirePositive('EWMA', 'sigma', sigma);
  requirePositive('EWMA', 'width', width);
  const averages: number[] = [];
  for (const value of values) averages.push(lambda * value + (1 - lambda) * (averages.at(-1) ?? target));
  const asymptotic = width * sigma * Math.sqrt(lambda / (2 - lambda));
  const widths = values.map((_, index) => asymptotic * Math.sqrt(1 - (1 - lambda) ** (2 * (index + 1))));
  return {
    averages,
    upper: widths.map((half) => target + half),
    lower: widths.map((half) => target - half),
    upperAsymptotic: target + asymptotic,
    lowerAsymptotic: target - asymptotic,
    signals: averages.flatMap((average, index) => (Math.abs(average - target) > widths[index]! ? [index] : [])),
  };
}
