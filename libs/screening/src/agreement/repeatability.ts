import { NoSpreadError, TooFewValuesError } from '../errors.js';
import { meanAndSpread } from '../sample/mean-and-spread.js';
import { requireSample } from '../sample/sample.js';

export interface Repeatability {
  readonly groups: number;
  /** Mean over all readings. */
  readonly mean: number;
  readonly sdOfGroupMeans: number;
  /** Repeatability standard deviation: within a group. */
  readonly withinSd: number;
  /** Between-group standard deviation, cut at zero. */
  readonly betweenSd: number;
  /** Reproducibility standard deviation: of single readings from different groups. */
  readonly reproducibilitySd: number;
  /** 2.8 times each: 95 % of pairs differ by less. */
  readonly repeatabilityLimit: number;
  readonly reproducibilityLimit: number;
  /** Mandel's h per group: distance of its mean from the general mean, in standard deviations of the means. */
  readonly h: readonly number[];
  /** Mandel's k per group: its spread over the pooled spread. */
  readonly k: readonly number[];
  /** Cochran's C: the largest variance over the sum of all. */
  readonly cochranC: number;
}

/**
 * Precision of a reading that several groups (people, devices, benches, laboratories) repeat on the same thing.
 *
 * @param groups the readings of each group, two or more in each
 * @see ISO 5725-2:2019, Accuracy of measurement methods and results, part 2; ASTM E691 (its worked example is the test)
 */
export function repeatability(groups: readonly (readonly number[])[]): Repeatability {
  if (groups.length < 2) throw new TooFewValuesError('Repeatability', groups.length, 2, 'groups');
  groups.forEach((group, at) => {
    requireSample(`Repeatability, group ${String(at + 1)}`, group, 2);
  });
  const cells = groups.map((group) => meanAndSpread(group));
  const total = cells.reduce((sum, cell) => sum + cell.n, 0);
  const generalMean = cells.reduce((sum, cell) => sum + cell.n * cell.mean, 0) / total;
  const variances = cells.map((cell) => cell.sd ** 2);
  const pooled = cells.reduce((sum, cell) => sum + (cell.n - 1) * cell.sd ** 2, 0) / (total - cells.length);
  const p = cells.length;
  const weightedSquares = cells.reduce((sum, cell) => sum + cell.n * (cell.mean - generalMean) ** 2, 0);
  const sdOfGroupMeans = meanAndSpread(cells.map((cell) => cell.mean)).sd;
  if (pooled === 0 || sdOfGroupMeans === 0) throw new NoSpreadError('Repeatability');
  const meanSize = (total - cells.reduce((sum, cell) => sum + cell.n ** 2, 0) / total) / (p - 1);
  const between = Math.max(0, (weightedSquares / (p - 1) - pooled) / meanSize);
  const withinSd = Math.sqrt(pooled);
  const reproducibilitySd = Math.sqrt(pooled + between);
  return {
    groups: p,
    mean: generalMean,
    sdOfGroupMeans,
    withinSd,
    betweenSd: Math.sqrt(between),
    reproducibilitySd,
    repeatabilityLimit: 2.8 * withinSd,
    reproducibilityLimit: 2.8 * reproducibilitySd,
    h: cells.map((cell) => (cell.mean - generalMean) / sdOfGroupMeans),
    k: cells.map((cell) => cell.sd / withinSd),
    cochranC: Math.max(...variances) / variances.reduce((sum, variance) => sum + variance, 0),
  };
}
