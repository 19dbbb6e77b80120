import type { ArmEvaluation, Evaluation } from '../evaluation/evaluation.js';
import type { TracingInput } from '../evaluation/tracing-input.js';
import { toRadians, type Point } from '../point.js';

/** Far ends of the arms' tangents, as worn: where a drawing of the evaluation ends them. */
export function armEnds(
  { apex, arms }: Pick<Evaluation, 'apex' | 'arms'>,
  stylusOn: TracingInput['stylusOn'],
): { readonly right: Point; readonly left: Point } {
  const turn = stylusOn === 'upper' ? -1 : 1;
  const end = ({ angleDeg, lengthMm }: ArmEvaluation, side: 1 | -1): Point => ({
    x: apex.x + turn * side * lengthMm * Math.cos(toRadians(angleDeg)),
    y: apex.y + turn * lengthMm * Math.sin(toRadians(angleDeg)),
  });
  return { right: end(arms.right, 1), left: end(arms.left, -1) };
}
