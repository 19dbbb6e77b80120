import type { TracingView } from '@archwright/contracts';
import { Capture, Tracing } from '@archwright/records';
import {
  drawEvaluation,
  type ArmEvaluation,
  type Evaluation,
  type NoApex,
  type TracedPoint,
} from '@archwright/tracing';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { RecordNotFoundError } from '../errors.js';
import type { CapturedTracing } from './captured.js';
import type { KeptEntry } from './settle-tracing.js';
import { loadStage } from './stage-record.js';

/** @param index place among the tracings of the stage, from 0 */
export function viewTracing({ entry, evaluation }: CapturedTracing, index: number): TracingView {
  const { doubts, ...rest } = entry;
  return {
    ...rest,
    ...(doubts === undefined ? {} : { doubts: [...doubts] }),
    number: index + 1,
    isDrawn: evaluation !== null,
    evaluation: evaluation === null || evaluation.apex === null ? null : viewEvaluation(evaluation),
  };
}

/** Thousandths: finer than any hand, and no digits beyond what is told apart. */
const rounded = (value: number): number => Math.round(value * 1000) / 1000;

const viewArm = ({ angleDeg, lengthMm, rmsMm }: ArmEvaluation) => ({
  angleDeg: rounded(angleDeg),
  lengthMm: rounded(lengthMm),
  rmsMm: rounded(rmsMm),
});

function viewEvaluation(evaluation: Evaluation): TracingView['evaluation'] {
  const { apex, apexUncertaintyMm, apexAngleDeg, arms, protrusiveDeviationDeg } = evaluation;
  return {
    apex: { xMm: rounded(apex.x), yMm: rounded(apex.y), uncertaintyMm: rounded(apexUncertaintyMm) },
    apexAngleDeg: rounded(apexAngleDeg),
    arms: { right: viewArm(arms.right), left: viewArm(arms.left) },
    protrusiveDeviationDeg: protrusiveDeviationDeg === null ? null : rounded(protrusiveDeviationDeg),
  };
}

/**
 * The evaluation of one tracing as a picture, from points and evaluation as they were kept: a later version of the
 * geometry changes no drawing of today.
 *
 * @param number place among the tracings of the stage, from 1
 * @returns an SVG document that names nobody
 * @throws {RecordNotFoundError} for a stage or tracing that is not there, and for one whose findings were typed
 */
export async function drawTracing(tx: EntityManager, actor: Actor, stageId: string, number: number): Promise<string> {
  await loadStage(tx, actor, stageId);
  const kept = await tx
    .createQueryBuilder(Tracing, 'tracing')
    .addSelect('tracing.points')
    .innerJoin(Capture, 'capture', 'capture.id = tracing.capture_id')
    .where('tracing.stage_id = :stageId', { stageId })
    .orderBy('capture.recorded_at')
    .addOrderBy('capture.id')
    .addOrderBy('tracing.attempt')
    .offset(number - 1)
    .limit(1)
    .getOne();
  if (kept?.points == null) throw new RecordNotFoundError('drawn tracing', String(number));
  const { stylusOn, view } = kept.entry as KeptEntry;
  const points = kept.points as readonly TracedPoint[];
  return drawEvaluation({ points, stylusOn, view }, kept.evaluation as Evaluation | NoApex);
}
