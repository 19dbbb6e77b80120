import { distance, dot, minus, toRadians, type Point } from '../point.js';
import type { ApexFit } from './apex.js';
import { bisectorOf } from './features.js';

/** The trace is followed around the apex over gaps up to this, mm. */
const CONTINUOUS_MM = 0.7;
/** Points this near the apex are looked at, mm. */
const NEAR_MM = 2.5;
/** Radii tried, mm; the arms of a blunter trace meet in no point at all. */
const STEP_MM = 0.01;
const LARGEST_MM = 5;
/** A point farther off a radius than this, mm, says no more against it: it belongs to a wild stroke. */
const WILD_MM = 0.3;
/** A sharp apex that the points follow as well as any, to this, mm, is one: in a flat arch a hair's breadth is a large radius. */
const SAME_MM = 0.003;
/** Nor is it blunt where the scatter of the points explains the rounding: of twenty sharp ones one is not taken for one (chi-square, 95 %). */
const CHANCE = 3.84;

/**
 * Radius of the rounding of the apex, from the gap between the crossing of the arms and the trace on their bisector.
 *
 * @param angleDeg apex angle
 * @param gapMm from the crossing to the trace, along the bisector
 */
export const roundingFromGapMm = (angleDeg: number, gapMm: number): number =>
  gapMm / (1 / Math.sin(toRadians(angleDeg / 2)) - 1);

/** Where a point near the apex lies: across the bisector, and forward of the straight arms as far as it is inside them. */
interface NearPoint {
  readonly side: number;
  readonly inside: number;
}

/** How far inside the crossing arms a rounding of this radius runs, at a distance across the bisector. */
function insideOf(radiusMm: number, side: number, half: number): number {
  // Beyond the tangent points the trace is the arm.
  if (side >= radiusMm * Math.cos(half)) return 0;
  return radiusMm / Math.sin(half) - Math.sqrt(radiusMm ** 2 - side ** 2) - side / Math.tan(half);
}

/**
 * Rounding of the apex, mm: the radius of the circle between the arms that the points near the apex follow best, 0
 * where none is better than the crossing arms. Points lie some tenths of a millimetre apart: the straight way from the last of one arm to
 * the first of the other would make every sharp apex blunt.
 *
 * @returns null when the trace does not reach around the apex: where an arm ends short of it nothing is known
 */
export function roundingRadiusMm(fit: ApexFit, right: readonly Point[], left: readonly Point[]): number | null {
  const half = toRadians(fit.angleDeg / 2);
  const bisector = bisectorOf(fit);
  const across = { x: bisector.y, y: -bisector.x };
  const near = (points: readonly Point[]) =>
    points
      .filter((point) => distance(point, fit.apex) < NEAR_MM)
      .map((point) => ({ point, side: Math.abs(dot(minus(point, fit.apex), across)) }))
      .sort((a, b) => a.side - b.side);
  const [nearRight, nearLeft] = [near(right), near(left)];
  const [rightmost, leftmost] = [nearRight[0], nearLeft[0]];
  if (rightmost === undefined || leftmost === undefined) return null;
  if (distance(rightmost.point, leftmost.point) > CONTINUOUS_MM) return null;
  const points = [...nearRight, ...nearLeft].map(({ point, side }): NearPoint => {
    const forward = dot(minus(point, fit.apex), bisector);
    return { side, inside: forward - side / Math.tan(half) };
  });
  const misfit = (radiusMm: number) =>
    points.reduce(
      (sum, { side, inside }) => sum + Math.min(WILD_MM, Math.abs(inside - insideOf(radiusMm, side, half))) ** 2,
      0,
    );
  const radii = Array.from({ length: LARGEST_MM / STEP_MM }, (_, at) => at * STEP_MM);
  const misfits = radii.map(misfit);
  const least = misfits.reduce((a, b) => Math.min(a, b));
  const isSharp = misfits[0]! <= least * (1 + CHANCE / points.length) + points.length * SAME_MM ** 2;
  return isSharp ? 0 : radii[misfits.indexOf(least)]!;
}
