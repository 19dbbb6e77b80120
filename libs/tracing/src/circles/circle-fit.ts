import { Matrix, solve } from 'ml-matrix';
import { requirePoints, TracingError } from '../errors.js';
import { centroid, distance, minus, plus, type Point } from '../point.js';

export interface Circle {
  readonly centre: Point;
  readonly radius: number;
}

interface Moments {
  readonly mean: Point;
  readonly centred: readonly Point[];
  readonly xx: number;
  readonly yy: number;
  readonly xy: number;
  readonly xz: number;
  readonly yz: number;
  readonly zz: number;
}

/** Moments about the mean, z = x² + y². */
function momentsOf(points: readonly Point[]): Moments {
  requirePoints('Circle', points, 3);
  const mean = centroid(points);
  const centred = points.map((point) => minus(point, mean));
  const average = (of: (x: number, y: number, z: number) => number) =>
    centred.reduce((sum, { x, y }) => sum + of(x, y, x * x + y * y), 0) / centred.length;
  const moments = {
    mean,
    centred,
    xx: average((x) => x * x),
    yy: average((_, y) => y * y),
    xy: average((x, y) => x * y),
    xz: average((x, _, z) => x * z),
    yz: average((_, y, z) => y * z),
    zz: average((_, __, z) => z * z),
  };
  const determinant = moments.xx * moments.yy - moments.xy ** 2;
  if (!(determinant > 1e-12 * (moments.xx + moments.yy) ** 2)) {
    throw new TracingError('collinear', 'Circle: the points lie on a straight line; no circle fits.');
  }
  return moments;
}

/**
 * Linear least squares of x² + y² = a x + b y + c. On a short arc it makes the radius too small.
 *
 * @see Kåsa (1976), A circle fitting procedure and its error analysis, IEEE Trans. Instrum. Meas. 25:8-14
 */
export function kasaCircle(points: readonly Point[]): Circle {
  const { mean, xx, yy, xy, xz, yz } = momentsOf(points);
  const determinant = xx * yy - xy * xy;
  const x = (xz * yy - yz * xy) / (2 * determinant);
  const y = (yz * xx - xz * xy) / (2 * determinant);
  return { centre: plus(mean, { x, y }), radius: Math.sqrt(x * x + y * y + xx + yy) };
}

/** The root of a fit's characteristic polynomial next to zero, by Newton from zero, and the circle that belongs to it. */
function circleAtRoot(
  moments: Moments,
  coefficients: readonly [number, number, number, number, number],
  shift: boolean,
): Circle {
  const [a0, a1, a2, a3, a4] = coefficients;
  let root = 0;
  for (let round = 0; round < 100; round++) {
    const value = a0 + root * (a1 + root * (a2 + root * (a3 + root * a4)));
    const slope = a1 + root * (2 * a2 + root * (3 * a3 + root * 4 * a4));
    const next = root - value / slope;
    if (!Number.isFinite(next) || next < 0) break;
    const isDone = Math.abs(next - root) <= 1e-15 * Math.abs(next);
    root = next;
    if (isDone) break;
  }
  const { mean, xx, yy, xy, xz, yz } = moments;
  const z = xx + yy;
  const determinant = root * root - root * z + xx * yy - xy * xy;
  const x = (xz * (yy - root) - yz * xy) / determinant / 2;
  const y = (yz * (xx - root) - xz * xy) / determinant / 2;
  return { centre: plus(mean, { x, y }), radius: Math.sqrt(x * x + y * y + z + (shift ? 2 * root : 0)) };
}

/** Algebraic fit with |gradient| normalised. @see Pratt (1987), Direct least-squares fitting of algebraic surfaces, SIGGRAPH 21:145-152 */
export function prattCircle(points: readonly Point[]): Circle {
  const moments = momentsOf(points);
  const { xx, yy, xy, xz, yz, zz } = moments;
  const z = xx + yy;
  const covariance = xx * yy - xy * xy;
  const variance = zz - z * z;
  const a2 = 4 * covariance - 3 * z * z - zz;
  const a1 = variance * z + 4 * covariance * z - xz * xz - yz * yz;
  const a0 = xz * (xz * yy - yz * xy) + yz * (yz * xx - xz * xy) - variance * covariance;
  return circleAtRoot(moments, [a0, a1, a2, 0, 4], true);
}

/** Algebraic fit with the mean squared gradient normalised. @see Taubin (1991), IEEE Trans. PAMI 13:1115-1138 */
export function taubinCircle(points: readonly Point[]): Circle {
  const moments = momentsOf(points);
  const { xx, yy, xy, xz, yz, zz } = moments;
  const z = xx + yy;
  const covariance = xx * yy - xy * xy;
  const variance = zz - z * z;
  const a3 = 4 * z;
  const a2 = -3 * z * z - zz;
  const a1 = variance * z + 4 * covariance * z - xz * xz - yz * yz;
  const a0 = xz * (xz * yy - yz * xy) + yz * (yz * xx - xz * xy) - variance * covariance;
  return circleAtRoot(moments, [a0, a1, a2, a3, 0], false);
}

/**
 * Least squares of the distances to the circle, by damped Gauss-Newton from Taubin's fit.
 *
 * @returns the circle and the sum of squared distances
 * @see Gander, Golub & Strebel (1994), Least-squares fitting of circles and ellipses, BIT 34:558-578
 */
export function geometricCircle(points: readonly Point[]): Circle & { readonly sumSquares: number } {
  const squaresOf = ({ centre, radius }: Circle) =>
    points.reduce((sum, point) => sum + (distance(point, centre) - radius) ** 2, 0);
  let circle = taubinCircle(points);
  let squares = squaresOf(circle);
  let damping = 1e-3;
  for (let round = 0; round < 200 && damping < 1e12; round++) {
    const normal = Matrix.zeros(3, 3);
    const right = Matrix.zeros(3, 1);
    for (const point of points) {
      const away = minus(point, circle.centre);
      const size = Math.hypot(away.x, away.y);
      const gradient = [-away.x / size, -away.y / size, -1];
      const residual = size - circle.radius;
      for (let i = 0; i < 3; i++) {
        right.set(i, 0, right.get(i, 0) - gradient[i]! * residual);
        for (let j = 0; j < 3; j++) normal.set(i, j, normal.get(i, j) + gradient[i]! * gradient[j]!);
      }
    }
    const damped = Matrix.add(normal, Matrix.diag(normal.diagonal().map((value) => value * damping)));
    const [dx, dy, dr] = solve(damped, right).getColumn(0) as [number, number, number];
    const next = { centre: plus(circle.centre, { x: dx, y: dy }), radius: circle.radius + dr };
    const nextSquares = squaresOf(next);
    if (nextSquares > squares) {
      damping *= 10;
      continue;
    }
    const isDone = Math.abs(dx) + Math.abs(dy) + Math.abs(dr) < 1e-13 * circle.radius;
    circle = next;
    squares = nextSquares;
    damping /= 10;
    if (isDone) break;
  }
  return { ...circle, sumSquares: squares };
}
