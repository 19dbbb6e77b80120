import { mean } from 'simple-statistics';
import { NoSpreadError } from '../errors.js';
import { tQuantile } from '../distribution/quantiles.js';
import { differencesOf, requireBetween, requirePairs, varies } from '../sample/sample.js';
import { meanAndSpread } from '../sample/mean-and-spread.js';

/** Normal quantile of 0.975 as the method states it. */
const AGREEMENT = 1.96;

type Interval = readonly [low: number, high: number];

export interface BlandAltman {
  readonly n: number;
  /** Of first minus second. */
  readonly meanDifference: number;
  readonly sdDifference: number;
  readonly seMean: number;
  readonly meanInterval: Interval;
  /** Mean difference ± 1.96 standard deviations. */
  readonly limits: Interval;
  /** √(3 s² / n), the paper's approximation. */
  readonly seLimit: number;
  /** √(s² / n + 1.96² s² / (2 (n - 1))), without the paper's rounding. */
  readonly seLimitExact: number;
  readonly lowerLimitInterval: Interval;
  readonly upperLimitInterval: Interval;
  /** Correlation of the two; null where one does not vary. */
  readonly pearson: number | null;
  readonly concordance: number;
  /** Correlation of the difference with the mean of the two: far from 0, compare logarithms instead. */
  readonly correlationWithMean: number | null;
}

/** Sums of products about the means, divisor n. */
function moments(first: readonly number[], second: readonly number[]) {
  const [a, b] = [mean([...first]), mean([...second])];
  const average = (of: (index: number) => number) => mean(first.map((_, index) => of(index)));
  return {
    meanGap: a - b,
    varianceA: average((at) => (first[at]! - a) ** 2),
    varianceB: average((at) => (second[at]! - b) ** 2),
    covariance: average((at) => (first[at]! - a) * (second[at]! - b)),
  };
}

const correlation = (first: readonly number[], second: readonly number[]): number | null => {
  if (!varies(first) || !varies(second)) return null;
  const { varianceA, varianceB, covariance } = moments(first, second);
  return covariance / Math.sqrt(varianceA * varianceB);
};

/**
 * Limits of agreement between two readings of the same subjects.
 *
 * @throws {NoSpreadError} when all differences are equal
 * @param level of the intervals around mean and limits
 * @see Bland & Altman (1986), Statistical methods for assessing agreement, Lancet i:307-310 (prints ± 2 s); Lin (1989),
 *   A concordance correlation coefficient, Biometrics 45:255-268
 */
export function blandAltman(first: readonly number[], second: readonly number[], level = 0.95): BlandAltman {
  requirePairs('Bland-Altman', first, second, 3);
  requireBetween('Bland-Altman', 'level', level, 0, 1);
  const differences = differencesOf(first, second);
  const { n, mean: meanDifference, sd } = meanAndSpread(differences);
  if (sd === 0)
    throw new NoSpreadError(
      'Bland-Altman',
      `Every difference is ${String(meanDifference)}: the resolution hides the scatter, or a column was given twice.`,
    );
  const seMean = sd / Math.sqrt(n);
  const seLimit = Math.sqrt((3 * sd * sd) / n);
  const t = tQuantile((1 + level) / 2, n - 1);
  const around = (centre: number, half: number): Interval => [centre - half, centre + half];
  const limits = around(meanDifference, AGREEMENT * sd);
  const { meanGap, varianceA, varianceB, covariance } = moments(first, second);
  return {
    n,
    meanDifference,
    sdDifference: sd,
    seMean,
    meanInterval: around(meanDifference, t * seMean),
    limits,
    seLimit,
    seLimitExact: sd * Math.sqrt(1 / n + AGREEMENT ** 2 / (2 * (n - 1))),
    lowerLimitInterval: around(limits[0], t * seLimit),
    upperLimitInterval: around(limits[1], t * seLimit),
    pearson: correlation(first, second),
    concordance: (2 * covariance) / (varianceA + varianceB + meanGap ** 2),
    correlationWithMean: correlation(
      differences,
      first.map((value, index) => (value + second[index]!) / 2),
    ),
  };
}
