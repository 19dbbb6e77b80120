import { OptionError } from '../errors.js';
import { requirePositive, requireSample } from '../sample/sample.js';

export interface CusumDesign {
  readonly target: number;
  /** Allowance, in the values' unit: half the shift to be found, usually. */
  readonly k: number;
  /** Decision interval, in the values' unit; its price is {@link cusumRunLength}. */
  readonly h: number;
}

export interface Cusum {
  readonly upper: readonly number[];
  readonly lower: readonly number[];
  /** Positions, from 0, where either sum exceeds h. */
  readonly signals: readonly number[];
}

/**
 * Tabular cumulative sum for a shift of the mean.
 *
 * @see Page (1954), Continuous inspection schemes, Biometrika 41:100-115; NIST/SEMATECH e-Handbook, 6.3.2.3
 */
export function cusum(values: readonly number[], { target, k, h }: CusumDesign): Cusum {
  requireSample('Cusum', values, 1);
  if (!(k >= 0)) throw new OptionError('Cusum', 'k', k, 'a number from 0 on');
  requirePositive('Cusum', 'h', h);
  const upper: number[] = [];
  const lower: number[] = [];
  for (const value of values) {
    upper.push(Math.max(0, (upper.at(-1) ?? 0) + value - target - k));
    lower.push(Math.max(0, (lower.at(-1) ?? 0) + target - value - k));
  }
  const signals = values.flatMap((_, index) => (upper[index]! > h || lower[index]! > h ? [index] : []));
  return { upper, lower, signals };
}
