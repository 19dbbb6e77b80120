import { LuDecomposition, Matrix } from 'ml-matrix';
import { dot, length, minus, plus, type Point } from '../point.js';
import type { Line } from '../lines/line.js';

/**
 * An arm near the apex: offset(s) = a + b s + c s² across an axis, s along it. Lateral movement is a rotation, so that
 * an arm is an arc, and a straight fit over a long one makes the apex angle too large.
 */
export interface ArmCurve {
  /** Axis: s grows away from the apex. */
  readonly axis: Line;
  readonly coefficients: readonly [a: number, b: number, c: number];
}

/** Normal of an axis, to the left of its direction. */
const normalOf = ({ direction }: Line): Point => ({ x: -direction.y, y: direction.x });

/** Position along an axis and offset across it. */
export function along(axis: Line, point: Point): { s: number; offset: number } {
  const away = minus(point, axis.through);
  return { s: dot(away, axis.direction), offset: dot(away, normalOf(axis)) };
}

export const offsetAt = ({ coefficients: [a, b, c] }: ArmCurve, s: number): number => a + b * s + c * s * s;

export function pointAt(curve: ArmCurve, s: number): Point {
  return plus(plus(curve.axis.through, curve.axis.direction, s), normalOf(curve.axis), offsetAt(curve, s));
}

/** Unit tangent at s, away from the apex. */
export function tangentAt({ axis, coefficients: [, b, c] }: ArmCurve, s: number): Point {
  const tangent = plus(axis.direction, normalOf(axis), b + 2 * c * s);
  const size = length(tangent);
  return { x: tangent.x / size, y: tangent.y / size };
}

/** Distance of a point across the arm. */
export function residualOf(curve: ArmCurve, point: Point): number {
  const { s, offset } = along(curve.axis, point);
  return offset - offsetAt(curve, s);
}

/** What is known of a curvature before looking: a mean and a standard deviation, per mm. */
export interface CurvaturePrior {
  readonly mean: number;
  readonly sd: number;
}

/**
 * Weighted least squares of the offsets across an axis.
 *
 * @param weights of the points, in reciprocal squared mm where a prior is given
 * @param prior of the curvature; without one the arm is straight
 */
export function fitCurve(
  axis: Line,
  points: readonly Point[],
  weights: readonly number[],
  prior: CurvaturePrior | null,
): ArmCurve {
  // Sums of s^k and of s^k offset, weighted.
  const power = new Float64Array(5);
  const moment = new Float64Array(3);
  points.forEach((point, index) => {
    const { s, offset } = along(axis, point);
    let term = weights[index]!;
    for (let k = 0; k < 5; k++) {
      power[k]! += term;
      if (k < 3) moment[k]! += term * offset;
      term *= s;
    }
  });
  const size = prior === null ? 2 : 3;
  const normal = Matrix.zeros(size, size);
  for (let i = 0; i < size; i++) for (let j = 0; j < size; j++) normal.set(i, j, power[i + j]!);
  const right = Matrix.columnVector([...moment.subarray(0, size)]);
  if (prior !== null) {
    const precision = 1 / prior.sd ** 2;
    normal.set(2, 2, normal.get(2, 2) + precision);
    right.set(2, 0, right.get(2, 0) + precision * prior.mean);
  }
  const lu = new LuDecomposition(normal);
  // All the weight on one place: any line through it serves, the axis is the natural one.
  if (lu.isSingular()) return { axis, coefficients: [moment[0]! / power[0]!, 0, 0] };
  const [a = 0, b = 0, c = 0] = lu.solve(right).getColumn(0);
  return { axis, coefficients: [a, b, c] };
}
