import { quantileOfSorted, sorted, type QuantileType } from '../sample/quantile.js';
import { requireSample, varies } from '../sample/sample.js';
import { NoSpreadError } from '../errors.js';

export interface BoxplotFences {
  readonly q1: number;
  readonly median: number;
  readonly q3: number;
  readonly iqr: number;
  readonly inner: readonly [low: number, high: number];
  readonly outer: readonly [low: number, high: number];
  /** Positions, from 0, of values beyond an inner fence but within the outer one. */
  readonly mild: readonly number[];
  /** Positions of values beyond an outer fence. */
  readonly extreme: readonly number[];
}

/**
 * Fences at 1.5 and 3 interquartile ranges beyond the quartiles.
 *
 * @throws {NoSpreadError} when all values are equal
 * @param type definition of the quartiles; 6, as the handbook has it, when left out
 * @see Tukey (1977), Exploratory Data Analysis; NIST/SEMATECH e-Handbook of Statistical Methods, 7.1.6
 */
export function boxplotFences(values: readonly number[], type: QuantileType = 6): BoxplotFences {
  requireSample('Box-plot fences', values, 4);
  if (!varies(values)) throw new NoSpreadError('Box-plot fences', 'There is nothing to set one value apart from.');
  const ascending = sorted(values);
  const [q1, median, q3] = [0.25, 0.5, 0.75].map((p) => quantileOfSorted(ascending, p, type)) as [
    number,
    number,
    number,
  ];
  const iqr = q3 - q1;
  const inner = [q1 - 1.5 * iqr, q3 + 1.5 * iqr] as const;
  const outer = [q1 - 3 * iqr, q3 + 3 * iqr] as const;
  const isBeyond = ([low, high]: readonly [number, number], value: number) => value < low || value > high;
  const positions = (isMeant: (value: number) => boolean) =>
    values.flatMap((value, index) => (isMeant(value) ? [index] : []));
  const extreme = positions((value) => isBeyond(outer, value));
  const mild = positions((value) => isBeyond(inner, value) && !isBeyond(outer, value));
  return { q1, median, q3, iqr, inner, outer, mild, extreme };
}
