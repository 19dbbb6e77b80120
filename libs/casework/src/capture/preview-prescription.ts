import type { PrescriptionPreview, PrescriptionPreviewQuery } from '@archwright/contracts';
import { Laboratory } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { valuesOf } from '../lab/work-orders.js';
import { materialsToAvoid } from '../patients/caution-words.js';
import { objectsMadeAt } from './hand-over.js';
import { contentOf, laboratoryOf, requireSignable } from './sign-prescription.js';
import { loadStage } from './stage-record.js';

/**
 * What a laboratory would be sent if the hand-over of a stage were signed now, as it would read it; nothing is signed.
 *
 * @param order what is written on it, as it is typed so far
 * @throws {WrongStateError} when no laboratory work follows the stage, or its visit has not begun
 */
export async function previewPrescription(
  tx: EntityManager,
  actor: Actor,
  stageId: string,
  order: PrescriptionPreviewQuery,
): Promise<PrescriptionPreview> {
  const record = await loadStage(tx, actor, stageId);
  requireSignable(record);
  const { chain, stage, treatmentCase } = record;
  const objects = objectsMadeAt(record).map(({ code }) => code);
  const laboratoryId = laboratoryOf(record);
  const laboratory = laboratoryId === null ? null : await tx.findOneBy(Laboratory, { id: laboratoryId });
  const work = chain.phases.filter(({ afterStage }) => afterStage === stage.code).flatMap(({ steps }) => steps);
  return {
    laboratoryName: laboratory?.name ?? null,
    work: work.map((code) => chain.steps.find((step) => step.code === code)?.title ?? code),
    values: valuesOf(await contentOf(tx, record, { order, objects })),
    objects,
    avoidMaterials: await materialsToAvoid(tx, treatmentCase.patientId),
  };
}
