import { requirePoints, TracingError } from '../errors.js';
import { type Point } from '../point.js';
import type { SlopeLine } from './line.js';
import { ordinaryLeastSquares } from './ordinary-least-squares.js';

export interface WeightedPoint extends Point {
  /** Reciprocal variances of the two coordinates, above 0. */
  readonly weightX: number;
  readonly weightY: number;
}

const MOST_ROUNDS = 200;

/**
 * Line with known errors in both coordinates, uncorrelated.
 *
 * @returns the line and the weighted sum of squared residuals at the optimum
 * @see York (1966), Least-squares fitting of a straight line, Canadian Journal of Physics 44:1079-1086
 */
export function yorkLine(points: readonly WeightedPoint[]): SlopeLine & { readonly weightedSum: number } {
  requirePoints('York line', points, 3);
  if (points.some(({ weightX, weightY }) => !(weightX > 0 && weightY > 0))) {
    throw new TracingError('not-a-number', 'York line: a weight is not above 0. Accepted: reciprocal variances.');
  }
  let { slope } = ordinaryLeastSquares(points);
  let intercept = 0;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const weights = points.map(({ weightX, weightY }) => (weightX * weightY) / (weightX + slope * slope * weightY));
    const total = weights.reduce((sum, weight) => sum + weight, 0);
    const meanX = points.reduce((sum, { x }, index) => sum + weights[index]! * x, 0) / total;
    const meanY = points.reduce((sum, { y }, index) => sum + weights[index]! * y, 0) / total;
    let [numerator, denominator] = [0, 0];
    points.forEach(({ x, y, weightX, weightY }, index) => {
      const weight = weights[index]!;
      const [u, v] = [x - meanX, y - meanY];
      const beta = weight * (u / weightY + (slope * v) / weightX);
      numerator += weight * beta * v;
      denominator += weight * beta * u;
    });
    const next = numerator / denominator;
    intercept = meanY - next * meanX;
    const isDone = Math.abs(next - slope) <= 1e-14 * Math.max(1, Math.abs(next));
    slope = next;
    if (isDone) break;
  }
  const weightedSum = points.reduce((sum, { x, y, weightX, weightY }) => {
    const weight = (weightX * weightY) / (weightX + slope * slope * weightY);
    return sum + weight * (y - intercept - slope * x) ** 2;
  }, 0);
  return { slope, intercept, weightedSum };
}
