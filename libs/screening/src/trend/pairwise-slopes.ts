import { median } from 'simple-statistics';
import { NoSpreadError } from '../errors.js';
import { requireAtMost, requirePairs } from '../sample/sample.js';

/** Five thousand points are twelve million pairs, a second and 100 MB; project limit. */
export const MOST_POINTS = 5_000;

/** Slopes of the lines through all pairs with different x, ascending. */
export function pairwiseSlopes(x: readonly number[], y: readonly number[]): Float64Array {
  const slopes = new Float64Array((x.length * (x.length - 1)) / 2);
  let count = 0;
  for (let i = 1; i < x.length; i++) {
    for (let j = 0; j < i; j++) {
      const run = x[i]! - x[j]!;
      if (run !== 0) slopes[count++] = (y[i]! - y[j]!) / run;
    }
  }
  return slopes.subarray(0, count).sort();
}

export interface TheilSenLine {
  readonly slope: number;
  /** Median of `y - slope x`. */
  readonly intercept: number;
}

const middle = (ascending: Float64Array): number => {
  const half = ascending.length >> 1;
  return ascending.length % 2 === 1 ? ascending[half]! : (ascending[half - 1]! + ascending[half]!) / 2;
};

/**
 * Line with the median of all pairwise slopes; up to 29 % of the points may be wild.
 *
 * @throws {NoSpreadError} when all x are equal
 * @see Sen (1968), Estimates of the regression coefficient based on Kendall's tau, JASA 63:1379-1389
 */
export function theilSen(x: readonly number[], y: readonly number[]): TheilSenLine {
  requirePairs('Theil-Sen', x, y, 2);
  requireAtMost('Theil-Sen', x.length, MOST_POINTS);
  const slopes = pairwiseSlopes(x, y);
  if (slopes.length === 0) throw new NoSpreadError('Theil-Sen', 'At least two different x are needed.');
  const slope = middle(slopes);
  return { slope, intercept: median(y.map((value, index) => value - slope * x[index]!)) };
}
