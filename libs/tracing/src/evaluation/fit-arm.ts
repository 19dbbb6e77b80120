import { consensusLine } from '../lines/consensus-line.js';
import type { Line } from '../lines/line.js';
import { dot, minus, type Point } from '../point.js';
import { along, fitCurve, residualOf, type ArmCurve, type CurvaturePrior } from './arm-curve.js';

export interface ArmFit {
  readonly curve: ArmCurve;
  /** What was taken for known of the curvature; null for an arm too short to tell. */
  readonly prior: CurvaturePrior | null;
  /** Points the fit looked at, and the weight, 0 to 1, that each kept. */
  readonly points: readonly Point[];
  readonly weights: readonly number[];
  /** Root mean square of the distances across the arm, of the points that kept some weight, mm. */
  readonly rmsMm: number;
}

/** A hand-drawn line in mm keeps within this of its own middle; only the first guess depends on it. */
const CONSENSUS_MM = 0.15;
/** Tukey's bisquare at 95 % efficiency. */
const TUNING = 4.685;
/** Residuals are never taken for finer than this, mm: a drawing from a formula is exact. */
const FINEST_MM = 1e-4;
const MOST_ROUNDS = 60;
/** Fewer points, or a shorter stretch, tell nothing of an arc. */
const ARC_POINTS = 10;
const ARC_STRETCH_MM = 2.5;
/**
 * Half the reciprocal radius, per mm, bending away from the other arm. The needle turns about a condyle some 75 to
 * 130 mm away (geometry of the planar model), or the side shift straightens the path: straight and the narrowest arc
 * both lie within one standard deviation or a little more. A clear drawing overrules it, a noisy one is not led far.
 */
const ARC: CurvaturePrior = { mean: 0.0025, sd: 0.0025 };

const bisquare = (u: number): number => (Math.abs(u) >= 1 ? 0 : (1 - u * u) ** 2);

/** Median absolute residual on the scale of a standard deviation. */
function scaleOf(residuals: readonly number[]): number {
  const sizes = residuals.map(Math.abs).sort((a, b) => a - b);
  return Math.max(FINEST_MM, 1.4826 * sizes[Math.floor((sizes.length - 1) / 2)]!);
}

/** Orients a line so that it leads from `from` to where most points are. */
function awayFrom(line: Line, from: Point, points: readonly Point[]): Line {
  const forward = points.filter((point) => dot(minus(point, from), line.direction) > 0).length;
  if (2 * forward >= points.length) return line;
  return { through: line.through, direction: { x: -line.direction.x, y: -line.direction.y } };
}

function tellsOfArc(axis: Line, points: readonly Point[]): boolean {
  const positions = points.map((point) => along(axis, point).s);
  return points.length >= ARC_POINTS && Math.max(...positions) - Math.min(...positions) >= ARC_STRETCH_MM;
}

/**
 * Robust fit of one arm: exhaustive consensus for a start no wild point can spoil, then bisquare weights.
 *
 * @param points of the arm near the apex, at least two different ones, mm
 * @param apex a first guess, which only says which way the arm leads
 * @param bend side to which an arc bends, seen along the arm away from the apex: 1 left, -1 right
 */
export function fitArm(points: readonly Point[], apex: Point, bend: 1 | -1): ArmFit {
  const axis = awayFrom(consensusLine(points, CONSENSUS_MM).line, apex, points);
  const prior = tellsOfArc(axis, points) ? { mean: bend * ARC.mean, sd: ARC.sd } : null;
  let curve: ArmCurve = { axis, coefficients: [0, 0, 0] };
  let weights: readonly number[] = [];
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const residuals = points.map((point) => residualOf(curve, point));
    const scale = scaleOf(residuals);
    const next = residuals.map((residual) => bisquare(residual / (TUNING * scale)));
    const isSettled = weights.length > 0 && next.every((weight, at) => Math.abs(weight - weights[at]!) < 1e-6);
    weights = next;
    curve = fitCurve(
      axis,
      points,
      next.map((weight) => weight / scale ** 2),
      prior,
    );
    if (isSettled) break;
  }
  const kept = points.filter((_, at) => weights[at]! > 0);
  const squares = kept.reduce((sum, point) => sum + residualOf(curve, point) ** 2, 0);
  const rmsMm = Math.sqrt(squares / kept.length);
  return { curve, prior, points, weights, rmsMm };
}

/** A path drawn by hand keeps within this of a straight line, mm. */
const PATH_MM = 0.3;

/** Straight line of a path away from the apex, for one that is only compared in direction; wild points don't count. */
export const pathOf = (points: readonly Point[], apex: Point): Line =>
  awayFrom(consensusLine(points, PATH_MM).line, apex, points);
