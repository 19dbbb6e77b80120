import { requirePoints, TracingError } from '../errors.js';
import { centroid, type Point } from '../point.js';
import type { SlopeLine } from './line.js';

export interface OrdinaryFit extends SlopeLine {
  /** Divisor n - 2. */
  readonly residualSd: number;
  readonly seSlope: number;
}

/** Least squares of vertical distances, for comparison: a tracing has errors in both coordinates. */
export function ordinaryLeastSquares(points: readonly Point[]): OrdinaryFit {
  requirePoints('Least squares', points, 3);
  const mean = centroid(points);
  let [sxx, sxy] = [0, 0];
  for (const { x, y } of points) {
    sxx += (x - mean.x) ** 2;
    sxy += (x - mean.x) * (y - mean.y);
  }
  if (sxx === 0) throw new TracingError('collinear', 'Least squares: all x are equal; no slope fits.');
  const slope = sxy / sxx;
  const intercept = mean.y - slope * mean.x;
  const squares = points.reduce((sum, { x, y }) => sum + (y - intercept - slope * x) ** 2, 0);
  const residualSd = Math.sqrt(squares / (points.length - 2));
  return { slope, intercept, residualSd, seSlope: residualSd / Math.sqrt(sxx) };
}
