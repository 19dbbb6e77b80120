import { requirePoints, TracingError } from '../errors.js';
import { centroid, cross, minus, plus, type Point } from '../point.js';

/** A straight line: a point on it and its unit direction. */
export interface Line {
  readonly through: Point;
  readonly direction: Point;
}

/** y = slope x + intercept. */
export interface SlopeLine {
  readonly slope: number;
  readonly intercept: number;
}

/** Signed orthogonal distance; positive on the left of the direction. */
export const offsetFrom = ({ through, direction }: Line, point: Point): number =>
  cross(direction, minus(point, through));

export function toSlopeLine({ through, direction }: Line): SlopeLine {
  const slope = direction.y / direction.x;
  return { slope, intercept: through.y - slope * through.x };
}

/** Root mean square of the orthogonal distances. */
export const rmsFrom = (line: Line, points: readonly Point[]): number =>
  Math.sqrt(points.reduce((sum, point) => sum + offsetFrom(line, point) ** 2, 0) / points.length);

/** Where two lines cross; null when they are parallel. */
export function intersect(a: Line, b: Line): Point | null {
  const denominator = cross(a.direction, b.direction);
  if (Math.abs(denominator) < 1e-12) return null;
  return plus(a.through, a.direction, cross(minus(b.through, a.through), b.direction) / denominator);
}

/**
 * Total least squares: the line with the smallest sum of squared orthogonal distances.
 *
 * @param weights of the points; equal when left out
 * @throws {TracingError} when all points coincide
 * @see Pearson (1901), On lines and planes of closest fit to systems of points in space, Phil. Mag. 2:559-572
 */
export function totalLeastSquares(points: readonly Point[], weights?: readonly number[]): Line {
  requirePoints('Line', points, 2);
  const weightAt = (index: number) => weights?.[index] ?? 1;
  let total = 0;
  let through: Point = { x: 0, y: 0 };
  points.forEach((point, index) => {
    total += weightAt(index);
    through = plus(through, point, weightAt(index));
  });
  through = weights === undefined ? centroid(points) : { x: through.x / total, y: through.y / total };
  let [sxx, sxy, syy] = [0, 0, 0];
  points.forEach((point, index) => {
    const { x, y } = minus(point, through);
    sxx += weightAt(index) * x * x;
    sxy += weightAt(index) * x * y;
    syy += weightAt(index) * y * y;
  });
  if (sxx + syy === 0) {
    throw new TracingError('too-few-points', 'Line: all points coincide. Give at least two different points.');
  }
  const angle = Math.atan2(2 * sxy, sxx - syy) / 2;
  return { through, direction: { x: Math.cos(angle), y: Math.sin(angle) } };
}
