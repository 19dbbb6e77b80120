import { offsetFrom } from '../lines/line.js';
import { angleBetweenDeg, cross, distance, dot, minus, plus, toDegrees, unit, type Point } from '../point.js';
import { along, residualOf } from './arm-curve.js';
import { findApex, type ApexFit } from './apex.js';
import { pathOf, type ArmFit } from './fit-arm.js';

/** A point this far off an arm's fit is no part of its length, mm. */
const OFF_ARM_MM = 1;
/** A gap is one when it is longer than this, mm, and this many times the arm's usual step. */
const GAP_MM = 1;
const GAP_STEPS = 3;

/** From the apex to the farthest point drawn along the arm, mm. */
export function armLengthMm(fit: ArmFit, points: readonly Point[], apex: Point): number {
  const onArm = points.filter((point) => Math.abs(residualOf(fit.curve, point)) <= OFF_ARM_MM);
  return Math.max(0, ...onArm.map((point) => distance(point, apex)));
}

/** Longest stretch of an arm without a point, mm; 0 when none is longer than a gap must be. */
export function longestGapMm(fit: ArmFit, points: readonly Point[]): number {
  const positions = points
    .filter((point) => Math.abs(residualOf(fit.curve, point)) <= OFF_ARM_MM)
    .map((point) => along(fit.curve.axis, point).s)
    .sort((a, b) => a - b);
  const steps = positions.slice(1).map((s, at) => s - positions[at]!);
  if (steps.length === 0) return 0;
  const usual = [...steps].sort((a, b) => a - b)[Math.floor(steps.length / 2)]!;
  const longest = Math.max(...steps);
  return longest > GAP_MM && longest > GAP_STEPS * usual ? longest : 0;
}

export const bisectorOf = ({ rightDirection, leftDirection }: ApexFit): Point =>
  unit(plus(rightDirection, leftDirection));

/** Protrusive path against the bisector of the arms, degrees; positive toward the patient's right. Null where none was drawn. */
export function protrusiveDeviationDeg(fit: ApexFit, protrusive: readonly Point[]): number | null {
  if (protrusive.length < 2) return null;
  const { direction } = pathOf(protrusive, fit.apex);
  const bisector = bisectorOf(fit);
  return toDegrees(Math.atan2(-cross(bisector, direction), dot(bisector, direction)));
}

/** How far the protrusive path reaches behind the apex, mm; 0 when it does not, null where none was drawn. */
export function dorsalExtensionMm(fit: ApexFit, protrusive: readonly Point[]): number | null {
  if (protrusive.length < 2) return null;
  const path = pathOf(protrusive, fit.apex);
  const bisector = bisectorOf(fit);
  const onPath = protrusive.filter((point) => Math.abs(offsetFrom(path, point)) <= OFF_ARM_MM);
  return Math.max(0, ...onPath.map((point) => -dot(minus(point, fit.apex), bisector)));
}

/** The points of an arm that its fit rejected, when they are many enough to be a second line. */
function rejected(fit: ArmFit): readonly Point[] {
  const out = fit.points.filter((_, at) => fit.weights[at]! < 0.2);
  return out.length >= Math.max(5, 0.25 * fit.points.length) ? out : [];
}

/** Apices farther apart than this are two, mm. */
const TWO_APICES_MM = 0.5;

/**
 * A second apex: both arms were drawn twice, and the second pair meets elsewhere. One doubled arm is enough when it
 * crosses the other elsewhere.
 */
export function secondApex(fit: ApexFit): Point | null {
  const [right, left] = [rejected(fit.right), rejected(fit.left)];
  if (right.length === 0 && left.length === 0) return null;
  const other = findApex(right.length === 0 ? fit.right.points : right, left.length === 0 ? fit.left.points : left);
  if (other === null || distance(other.apex, fit.apex) <= TWO_APICES_MM) return null;
  // A second line leads the same way; a wild stroke across the arm does not.
  const isParallel = (a: Point, b: Point) => angleBetweenDeg(a, b) < 20;
  return isParallel(other.rightDirection, fit.rightDirection) && isParallel(other.leftDirection, fit.leftDirection)
    ? other.apex
    : null;
}
