import type { SeededRandom } from '@archwright/kernel';
import { distance } from '../point.js';
import { along, fitCurve, residualOf, type ArmCurve } from './arm-curve.js';
import { crossing, type ApexFit } from './apex.js';
import type { ArmFit } from './fit-arm.js';

/** Samples of the bootstrap. */
const SAMPLES = 300;
/** Neighbouring points of a stroke err together: they are drawn again in stretches of this length, mm. */
const STRETCH_MM = 0.5;
/** Fewer different points do not hold a curve. */
const FEWEST_DIFFERENT = 3;
/** As fine as residuals are taken for, mm. */
const FINEST_MM = 1e-4;

/** Points of an arm in stretches along it. */
function stretchesOf({ curve, points }: ArmFit): number[][] {
  const order = points
    .map((_, at) => at)
    .sort((a, b) => along(curve.axis, points[a]!).s - along(curve.axis, points[b]!).s);
  const stretches: number[][] = [];
  let start = -Infinity;
  for (const at of order) {
    const { s } = along(curve.axis, points[at]!);
    if (s - start > STRETCH_MM) {
      stretches.push([]);
      start = s;
    }
    stretches.at(-1)!.push(at);
  }
  return stretches;
}

/** The arm again from stretches drawn with replacement; too few different points are jittered instead. */
function redrawn(fit: ArmFit, stretches: readonly (readonly number[])[], random: SeededRandom): ArmCurve {
  const drawn = stretches.flatMap(() => stretches[random.nextBelow(stretches.length)]!);
  const kept = drawn.filter((at) => fit.weights[at]! > 0);
  if (new Set(kept).size < FEWEST_DIFFERENT) return jittered(fit, random);
  const precision = 1 / Math.max(fit.rmsMm, FINEST_MM) ** 2;
  return fitCurve(
    fit.curve.axis,
    kept.map((at) => fit.points[at]!),
    kept.map((at) => fit.weights[at]! * precision),
    fit.prior,
  );
}

/** For an arm of a handful of points: the same places, residuals exchanged. */
function jittered(fit: ArmFit, random: SeededRandom): ArmCurve {
  const residuals = fit.points.map((point) => residualOf(fit.curve, point));
  const { direction } = fit.curve.axis;
  const points = fit.points.map((point, at) => {
    const shift = residuals[random.nextBelow(residuals.length)]! - residuals[at]!;
    return { x: point.x - direction.y * shift, y: point.y + direction.x * shift };
  });
  return fitCurve(fit.curve.axis, points, fit.weights, null);
}

/**
 * Uncertainty of the apex: root mean square distance of the apices of redrawn arms from it, mm.
 *
 * @param random decides the draws; the same seed gives the same figure
 * @see Efron & Tibshirani (1993), An Introduction to the Bootstrap; Künsch (1989), Annals of Statistics 17:1217-1241
 *   (stretches of dependent data)
 */
export function apexUncertaintyMm({ apex, right, left }: ApexFit, random: SeededRandom): number {
  const rightStretches = stretchesOf(right);
  const leftStretches = stretchesOf(left);
  let squares = 0;
  let count = 0;
  for (let sample = 0; sample < SAMPLES; sample++) {
    const met = crossing(redrawn(right, rightStretches, random), redrawn(left, leftStretches, random), apex);
    if (met === null) continue;
    squares += distance(met.apex, apex) ** 2;
    count++;
  }
  return Math.sqrt(squares / Math.max(1, count));
}
