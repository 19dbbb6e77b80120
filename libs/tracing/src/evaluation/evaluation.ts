import { seededRandom } from '@archwright/kernel';
import type { TracingDoubt } from '@archwright/measures';
import { closureStatistics, type Closures } from '../closures/closures.js';
import { TracingError } from '../errors.js';
import { totalLeastSquares, rmsFrom } from '../lines/line.js';
import { centroid, distance, dot, minus, plus, toDegrees, type Point } from '../point.js';
import { apexUncertaintyMm } from './apex-uncertainty.js';
import { findApex, type ApexFit } from './apex.js';
import {
  armLengthMm,
  bisectorOf,
  dorsalExtensionMm,
  longestGapMm,
  protrusiveDeviationDeg,
  secondApex,
} from './features.js';
import type { ArmFit } from './fit-arm.js';
import { formOf, type EvaluatedForm } from './form.js';
import { roundingRadiusMm } from './rounding.js';
import { toDrawing, turnOf, type Drawing, type TracingInput } from './tracing-input.js';

export interface ArmEvaluation {
  /** Of the tangent at the apex from the transverse axis, degrees. */
  readonly angleDeg: number;
  readonly lengthMm: number;
  /** Root mean square distance of the points from the fit, mm. */
  readonly rmsMm: number;
  /** Longest stretch without a point; 0 where none stands out. */
  readonly gapMm: number;
}

/** What a tracing says, as worn: x to the patient's right, y forward, mm and degrees. */
export interface Evaluation {
  readonly apex: Point;
  readonly apexUncertaintyMm: number;
  readonly apexCount: 'single' | 'double';
  readonly secondApex: Point | null;
  readonly apexAngleDeg: number;
  readonly arms: { readonly right: ArmEvaluation; readonly left: ArmEvaluation };
  /** Difference of the arms' angles from the transverse axis. */
  readonly asymmetryDeg: number;
  /** Shorter over longer arm, 0 to 1. */
  readonly lengthSymmetry: number;
  /** Positive toward the patient's right; null where no protrusive path was drawn. */
  readonly protrusiveDeviationDeg: number | null;
  readonly dorsalExtensionMm: number | null;
  /** Null where the trace does not reach around the apex. */
  readonly roundingRadiusMm: number | null;
  readonly closures: Closures | null;
  /** Of the closures' mean from the apex, and its part forward. */
  readonly offsetMm: number | null;
  readonly offsetForwardMm: number | null;
  readonly form: EvaluatedForm;
  /** What the drawing itself says against the stated needle or view. */
  readonly doubts: readonly TracingDoubt[];
}

/** No apex: the arms lie in one line, side by side, or meet away from what was drawn. */
export interface NoApex {
  readonly apex: null;
  readonly closures: Closures | null;
}

/** Points in one line to this, mm, are no tracing of any kind. */
const ONE_LINE_MM = 0.02;
/** Arms that lead more than half a right angle off forward are not drawn as stated. */
const LEAST_FORWARD = Math.SQRT1_2;
/** Of the bootstrap; any seed serves, this one makes answers repeat. */
const UNCERTAINTY_SEED = 1;

function armEvaluation(
  fit: ArmFit,
  points: readonly Point[],
  apex: Point,
  direction: Point,
  side: 1 | -1,
): ArmEvaluation {
  return {
    angleDeg: toDegrees(Math.atan2(direction.y, side * direction.x)),
    lengthMm: armLengthMm(fit, points, apex),
    rmsMm: fit.rmsMm,
    gapMm: longestGapMm(fit, points),
  };
}

/**
 * Evaluates a needle-point tracing. The answer supports judgement and does not replace it: none of the limits behind
 * `form` is published.
 *
 * @throws {TracingError} `too-few-points`, `not-a-number`, `unit`, or `collinear` when all points lie in one line
 * @returns a finding without apex when the arms do not make one
 */
export function evaluateTracing(input: TracingInput): Evaluation | NoApex {
  const drawing = toDrawing(input);
  const drawn = [...drawing.right, ...drawing.left];
  if (rmsFrom(totalLeastSquares(drawn), drawn) < ONE_LINE_MM) {
    throw new TracingError(
      'collinear',
      'All points of both arms lie in one straight line: that is no tracing. Check the phases and the columns.',
    );
  }
  const asWorn = (point: Point): Point => plus(drawing.origin, point, turnOf(input));
  const closures = drawing.closure.length === 0 ? null : closureStatistics(drawing.closure.map(asWorn));
  const fit = findApex(drawing.right, drawing.left);
  if (fit === null) return { apex: null, closures };
  return evaluationOf(fit, drawing, closures, asWorn);
}

function evaluationOf(
  fit: ApexFit,
  drawing: Drawing,
  closures: Closures | null,
  asWorn: (point: Point) => Point,
): Evaluation {
  const { right, left, protrusive } = drawing;
  const second = secondApex(fit);
  const arms = {
    right: armEvaluation(fit.right, right, fit.apex, fit.rightDirection, 1),
    left: armEvaluation(fit.left, left, fit.apex, fit.leftDirection, -1),
  };
  const apex = asWorn(fit.apex);
  const bisector = bisectorOf(fit);
  const findings: Omit<Evaluation, 'form'> = {
    apex,
    apexUncertaintyMm: apexUncertaintyMm(fit, seededRandom(UNCERTAINTY_SEED)),
    apexCount: second === null && closures?.isDouble !== true ? 'single' : 'double',
    secondApex: second === null ? null : asWorn(second),
    apexAngleDeg: fit.angleDeg,
    arms,
    asymmetryDeg: Math.abs(arms.right.angleDeg - arms.left.angleDeg),
    lengthSymmetry:
      Math.min(arms.right.lengthMm, arms.left.lengthMm) / Math.max(arms.right.lengthMm, arms.left.lengthMm),
    protrusiveDeviationDeg: protrusiveDeviationDeg(fit, protrusive),
    dorsalExtensionMm: dorsalExtensionMm(fit, protrusive),
    roundingRadiusMm: roundingRadiusMm(fit, right, left),
    closures,
    offsetMm: closures === null ? null : distance(closures.mean, apex),
    offsetForwardMm: closures === null ? null : dot(minus(centroid(drawing.closure), fit.apex), bisector),
    doubts: [
      ...(fit.rightDirection.x < fit.leftDirection.x ? (['arms-swapped'] as const) : []),
      ...(bisector.y < LEAST_FORWARD ? (['turned'] as const) : []),
    ],
  };
  return { ...findings, form: formOf(findings) };
}
