import { EigenvalueDecomposition, Matrix } from 'ml-matrix';

/** An abscissa and its weight: an integral is the weighted sum of the integrand there. */
export interface Node {
  readonly at: number;
  readonly weight: number;
}

/**
 * Gauss-Legendre nodes on [low, high] from the eigenvalues of the polynomials' recurrence.
 *
 * @see Golub & Welsch (1969), Calculation of Gauss quadrature rules, Mathematics of Computation 23:221-230
 */
export function gaussLegendre(low: number, high: number, count: number): Node[] {
  const recurrence = Matrix.zeros(count, count);
  for (let i = 1; i < count; i++) {
    const beta = i / Math.sqrt(4 * i * i - 1);
    recurrence.set(i - 1, i, beta).set(i, i - 1, beta);
  }
  const { realEigenvalues, eigenvectorMatrix } = new EigenvalueDecomposition(recurrence, { assumeSymmetric: true });
  const half = (high - low) / 2;
  return realEigenvalues.map((value, index) => ({
    at: low + half * (value + 1),
    weight: half * 2 * eigenvectorMatrix.get(0, index) ** 2,
  }));
}
