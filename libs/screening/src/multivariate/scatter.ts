import { CholeskyDecomposition, Matrix } from 'ml-matrix';

export interface CentreAndScatter {
  readonly centre: readonly number[];
  /** Covariance, divisor n - 1. */
  readonly covariance: Matrix;
}

/** Mean and covariance of the chosen rows (all when no choice is given). */
export function centreAndScatter(
  rows: readonly (readonly number[])[],
  chosen: readonly number[] = rows.map((_, index) => index),
): CentreAndScatter {
  const width = rows[0]!.length;
  const n = chosen.length;
  const centre = Array.from({ length: width }, (_, j) => chosen.reduce((sum, at) => sum + rows[at]![j]!, 0) / n);
  const covariance = Matrix.zeros(width, width);
  for (let j = 0; j < width; j++) {
    for (let k = 0; k <= j; k++) {
      const sum = chosen.reduce((total, at) => total + (rows[at]![j]! - centre[j]!) * (rows[at]![k]! - centre[k]!), 0);
      covariance.set(j, k, sum / (n - 1)).set(k, j, sum / (n - 1));
    }
  }
  return { centre, covariance };
}

/** A relative pivot below this makes the columns dependent for every practical purpose. */
const DEPENDENT = 1e-12;

/** Cholesky factor of a covariance; null when it is singular: a column is constant or follows from others. */
export function factorOf(covariance: Matrix): CholeskyDecomposition | null {
  const factor = new CholeskyDecomposition(covariance);
  if (!factor.isPositiveDefinite()) return null;
  const pivots = factor.lowerTriangularMatrix.diagonal();
  return pivots.every((pivot, j) => pivot * pivot > DEPENDENT * covariance.get(j, j)) ? factor : null;
}
