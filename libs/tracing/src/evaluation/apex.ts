import { consensusLine } from '../lines/consensus-line.js';
import { intersect } from '../lines/line.js';
import { angleBetweenDeg, centroid, cross, distance, dot, minus, type Point } from '../point.js';
import { along, pointAt, tangentAt, type ArmCurve } from './arm-curve.js';
import { fitArm, type ArmFit } from './fit-arm.js';

export interface ApexFit {
  readonly apex: Point;
  readonly right: ArmFit;
  readonly left: ArmFit;
  /** Unit tangents at the apex, away from it. */
  readonly rightDirection: Point;
  readonly leftDirection: Point;
  readonly angleDeg: number;
}

/** Nearer to the apex its rounding spoils the arms, farther away the arc does. */
const NEAR_MM = 1;
const FAR_MM = 5;
/** With fewer points in that window, or a gap that leaves a shorter stretch of it, mm, the whole arm is used. */
const ENOUGH_POINTS = 8;
const ENOUGH_STRETCH_MM = 2.5;
/** Arms closer than this to one line, or to each other, meet nowhere in particular. */
const LEAST_ANGLE_DEG = 15;
const FIRST_GUESS_MM = 0.3;
const MOST_ROUNDS = 5;

/** Where two arms cross, by Newton's method from the point next to a guess; null when they do not. */
export function crossing(right: ArmCurve, left: ArmCurve, guess: Point): { apex: Point; s: [number, number] } | null {
  let [r, l] = [along(right.axis, guess).s, along(left.axis, guess).s];
  for (let round = 0; round < 30; round++) {
    const gap = minus(pointAt(left, l), pointAt(right, r));
    // Derivatives of the two points along their axes; tangents are of unit length, so that they are scaled back.
    const u = scaledTangent(right, r);
    const v = scaledTangent(left, l);
    const determinant = cross(u, v);
    if (Math.abs(determinant) < 1e-9) return null;
    const stepRight = cross(gap, v) / determinant;
    const stepLeft = cross(gap, u) / determinant;
    r += stepRight;
    l += stepLeft;
    if (Math.abs(stepRight) + Math.abs(stepLeft) < 1e-11) return { apex: pointAt(right, r), s: [r, l] };
  }
  return null;
}

/** Derivative of the point along the axis: the tangent, scaled so that its part along the axis is 1. */
function scaledTangent(curve: ArmCurve, s: number): Point {
  const tangent = tangentAt(curve, s);
  const part = dot(tangent, curve.axis.direction);
  return { x: tangent.x / part, y: tangent.y / part };
}

function nearApex(points: readonly Point[], apex: Point): readonly Point[] {
  const within = (farthest: number) =>
    points.filter((point) => {
      const away = distance(point, apex);
      return away >= NEAR_MM && away <= farthest;
    });
  const isEnough = (near: readonly Point[]) => {
    const away = near.map((point) => distance(point, apex));
    return near.length >= ENOUGH_POINTS && Math.max(...away) - Math.min(...away) >= ENOUGH_STRETCH_MM;
  };
  return [within(FAR_MM), within(Infinity)].find(isEnough) ?? points;
}

function fitAt(right: readonly Point[], left: readonly Point[], guess: Point): ApexFit | null {
  const [nearRight, nearLeft] = [nearApex(right, guess), nearApex(left, guess)];
  // Each arm bends away from the other; which side that is depends on how they lie, not on what they are called.
  const isLeftOnTheLeft = cross(minus(centroid(nearRight), guess), minus(centroid(nearLeft), guess)) >= 0;
  const rightFit = fitArm(nearRight, guess, isLeftOnTheLeft ? -1 : 1);
  const leftFit = fitArm(nearLeft, guess, isLeftOnTheLeft ? 1 : -1);
  const met = crossing(rightFit.curve, leftFit.curve, guess);
  if (met === null) return null;
  const rightDirection = tangentAt(rightFit.curve, met.s[0]);
  const leftDirection = tangentAt(leftFit.curve, met.s[1]);
  const angleDeg = angleBetweenDeg(rightDirection, leftDirection);
  if (angleDeg < LEAST_ANGLE_DEG || angleDeg > 180 - LEAST_ANGLE_DEG) return null;
  return { apex: met.apex, right: rightFit, left: leftFit, rightDirection, leftDirection, angleDeg };
}

/** How far the apex may lie from the nearer end of an arm before the arms meet off the plate, mm. */
const REACH_MM = 6;
const reaches = (points: readonly Point[], apex: Point): boolean =>
  Math.min(...points.map((point) => distance(point, apex))) <= REACH_MM;

/**
 * Apex of a tracing: where the two arms, fitted near it, cross.
 *
 * @returns null when the arms lie within 15 degrees of one line or of each other, or meet away from what was drawn
 */
export function findApex(right: readonly Point[], left: readonly Point[]): ApexFit | null {
  const first = intersect(consensusLine(right, FIRST_GUESS_MM).line, consensusLine(left, FIRST_GUESS_MM).line);
  let guess = first ?? centroid([...right, ...left]);
  let fit: ApexFit | null = null;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    fit = fitAt(right, left, guess);
    if (fit === null) return null;
    const moved = distance(fit.apex, guess);
    guess = fit.apex;
    if (moved < 1e-4) break;
  }
  return fit !== null && reaches(right, fit.apex) && reaches(left, fit.apex) ? fit : null;
}
