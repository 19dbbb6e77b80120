import { Matrix } from 'ml-matrix';
import { chiSquareQuantile } from '../distribution/quantiles.js';
import { NoSpreadError } from '../errors.js';
import { requireBetween, requireRows } from '../sample/sample.js';
import { centreAndScatter, factorOf, type CentreAndScatter } from './scatter.js';

export interface MahalanobisDistances extends CentreAndScatter {
  readonly distances: readonly number[];
  /** √χ² of as many degrees of freedom as there are columns. */
  readonly cutoff: number;
  /** Positions, from 0, beyond the cut. */
  readonly outliers: readonly number[];
}

/**
 * Distance of each row from a centre in the metric of a scatter matrix.
 *
 * @throws {NoSpreadError} when the scatter matrix is singular: a column is constant or follows from others
 */
export function distancesFrom(
  method: string,
  rows: readonly (readonly number[])[],
  { centre, covariance }: CentreAndScatter,
): number[] {
  const factor = factorOf(covariance);
  if (factor === null) {
    throw new NoSpreadError(method, 'A column is constant or follows from the others: leave it out.');
  }
  const deviations = new Matrix(rows.map((row) => row.map((value, j) => value - centre[j]!)));
  const weighted = factor.solve(deviations.transpose());
  return rows.map((_, index) => {
    let square = 0;
    for (let j = 0; j < centre.length; j++) square += deviations.get(index, j) * weighted.get(j, index);
    return Math.sqrt(Math.max(0, square));
  });
}

/**
 * Classical distances from the mean. Outliers that come in groups mask one another here: see {@link minimumCovarianceDeterminant}.
 *
 * @param rows one row per case, one column per quantity
 * @param quantile share of ordinary rows within the cut-off
 * @see Mahalanobis (1936), On the generalised distance in statistics, Proc. National Institute of Sciences India 2:49-55
 */
export function mahalanobis(rows: readonly (readonly number[])[], quantile = 0.975): MahalanobisDistances {
  const width = requireRows('Mahalanobis', rows, 3);
  requireBetween('Mahalanobis', 'quantile', quantile, 0, 1);
  const scatter = centreAndScatter(rows);
  const distances = distancesFrom('Mahalanobis', rows, scatter);
  const cutoff = Math.sqrt(chiSquareQuantile(quantile, width));
  return { ...scatter, distances, cutoff, outliers: distances.flatMap((d, index) => (d > cutoff ? [index] : [])) };
}
