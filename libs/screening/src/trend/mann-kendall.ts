import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import { normalQuantile } from '../distribution/quantiles.js';
import { NoSpreadError } from '../errors.js';
import { requireAtMost, requireBetween, requireSample } from '../sample/sample.js';
import { MOST_POINTS, pairwiseSlopes, theilSen } from './pairwise-slopes.js';

export interface MannKendallTrend {
  /** Pairs that rise minus pairs that fall. */
  readonly statistic: number;
  /** Of the statistic without trend, corrected for ties. */
  readonly variance: number;
  readonly z: number;
  /** Two-sided. */
  readonly p: number;
  /** Median pairwise slope per step. */
  readonly senSlope: number;
  /** At step 0, where the first value is step 1. */
  readonly senIntercept: number;
  readonly slopeInterval: readonly [low: number, high: number];
}

function varianceWithTies(values: readonly number[]): number {
  const term = (n: number) => n * (n - 1) * (2 * n + 5);
  const sizes = new Map<number, number>();
  for (const value of values) sizes.set(value, (sizes.get(value) ?? 0) + 1);
  return (term(values.length) - [...sizes.values()].reduce((sum, size) => sum + term(size), 0)) / 18;
}

/** Value at a rank that need not be whole, by linear interpolation; rank 1 is the smallest. */
function atRank(ascending: Float64Array, rank: number): number {
  const inside = Math.min(Math.max(rank, 1), ascending.length);
  const below = Math.floor(inside);
  const low = ascending[below - 1]!;
  return low + (inside - below) * ((ascending[below] ?? low) - low);
}

/**
 * Test for a monotone trend in a series, and its slope.
 *
 * @param level of the interval of the slope
 * @see Mann (1945), Econometrica 13:245-259; Kendall (1975), Rank Correlation Methods; Sen (1968), JASA 63:1379-1389
 */
export function mannKendall(values: readonly number[], level = 0.95): MannKendallTrend {
  requireSample('Mann-Kendall', values, 4);
  requireBetween('Mann-Kendall', 'level', level, 0, 1);
  requireAtMost('Mann-Kendall', values.length, MOST_POINTS);
  let statistic = 0;
  for (let i = 1; i < values.length; i++) {
    for (let j = 0; j < i; j++) statistic += Math.sign(values[i]! - values[j]!);
  }
  const variance = varianceWithTies(values);
  if (variance === 0) throw new NoSpreadError('Mann-Kendall');
  const z = statistic === 0 ? 0 : (statistic - Math.sign(statistic)) / Math.sqrt(variance);
  const steps = values.map((_, index) => index + 1);
  const slopes = pairwiseSlopes(steps, values);
  const half = normalQuantile((1 + level) / 2) * Math.sqrt(variance);
  const { slope, intercept } = theilSen(steps, values);
  return {
    statistic,
    variance,
    z,
    p: 2 * normalCdf(-Math.abs(z), 0, 1),
    senSlope: slope,
    senIntercept: intercept,
    slopeInterval: [atRank(slopes, (slopes.length - half) / 2), atRank(slopes, (slopes.length + half) / 2 + 1)],
  };
}
