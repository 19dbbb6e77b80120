import tCdf from '@stdlib/stats-base-dists-t-cdf';
import { tQuantile } from '../distribution/quantiles.js';
import { NoSpreadError } from '../errors.js';
import { meanAndSpread } from '../sample/mean-and-spread.js';
import { requireBetween, requireSample } from '../sample/sample.js';

export interface GrubbsTest {
  readonly mean: number;
  readonly sd: number;
  /** Position of the value farthest from the mean, from 0. */
  readonly extremeIndex: number;
  readonly extremeValue: number;
  /** Largest distance from the mean in standard deviations. */
  readonly statistic: number;
  readonly criticalOneSided: number;
  readonly criticalTwoSided: number;
  /** Two-sided, Bonferroni over the n values. */
  readonly pTwoSided: number;
  readonly isOutlierOneSided: boolean;
  readonly isOutlierTwoSided: boolean;
}

/** Critical value of the largest studentised deviation of `n` values, at a tail probability per value. */
export function criticalDeviation(n: number, tailProbability: number): number {
  const t = tQuantile(1 - tailProbability, n - 2);
  return ((n - 1) / Math.sqrt(n)) * Math.sqrt((t * t) / (n - 2 + t * t));
}

/**
 * Test for one outlier in a normal sample.
 *
 * @param alpha probability of a false alarm, in (0, 1)
 * @throws {NoSpreadError} when all values are equal
 * @see Grubbs (1969), Procedures for detecting outlying observations in samples, Technometrics 11:1-21;
 *   NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.17.1
 */
export function grubbs(values: readonly number[], alpha = 0.05): GrubbsTest {
  requireSample('Grubbs', values, 3);
  requireBetween('Grubbs', 'alpha', alpha, 0, 1);
  const { n, mean, sd } = meanAndSpread(values);
  if (sd === 0) throw new NoSpreadError('Grubbs');
  const away = (at: number) => Math.abs(values[at]! - mean);
  const extremeIndex = values.reduce((farthest, _, at) => (away(at) > away(farthest) ? at : farthest), 0);
  const statistic = away(extremeIndex) / sd;
  const criticalOneSided = criticalDeviation(n, alpha / n);
  const criticalTwoSided = criticalDeviation(n, alpha / (2 * n));
  const rest = (n - 1) ** 2 - n * statistic ** 2;
  const t = Math.sqrt((n * (n - 2) * statistic ** 2) / Math.max(rest, 0));
  return {
    mean,
    sd,
    extremeIndex,
    extremeValue: values[extremeIndex]!,
    statistic,
    criticalOneSided,
    criticalTwoSided,
    // The lower tail by symmetry keeps the digits that 1 - cdf would lose.
    pTwoSided: Math.min(1, 2 * n * tCdf(-t, n - 2)),
    isOutlierOneSided: statistic > criticalOneSided,
    isOutlierTwoSided: statistic > criticalTwoSided,
  };
}
