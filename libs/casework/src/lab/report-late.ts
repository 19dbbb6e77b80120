import type { LateStep, ReportLateStep } from '@archwright/contracts';
import { Disturbance, LabStep, TreatmentCase } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { findAffected } from '../disturbances/affected.js';
import { noteDisturbance } from '../disturbances/enter-disturbance.js';
import { lossOf } from '../disturbances/loss.js';
import { RecordNotFoundError, WrongStateError } from '../errors.js';
import { notifyColleagues } from '../reminders/colleague-notice.js';
import { requireLaboratory } from './bench-steps.js';
import { viewLabStep } from './dispatch.js';
import { reportedLate } from './late-steps.js';

/**
 * The bench says that a step will be ready later than planned. Nothing moves: the front desk of the case's clinic is told,
 * sees whom it falls on, and decides among the plans that are looked for.
 *
 * @throws {RecordNotFoundError} for a step of no laboratory of the actor's
 * @throws {WrongStateError} for work that is over, or was said to be late already and is not decided
 */
export async function reportLateStep(
  tx: EntityManager,
  actor: Actor,
  stepId: string,
  { readyAt, reason }: ReportLateStep,
  now: Date,
): Promise<LateStep> {
  const step = await tx.findOneBy(LabStep, { id: stepId });
  if (step?.laboratoryId == null || step.startsAt === null) throw new RecordNotFoundError('laboratory step', stepId);
  await requireLaboratory(tx, actor, step.laboratoryId);
  // Everything that changes a case takes it first, so that two benches don't say it twice.
  await tx.query('SELECT FROM treatment_case WHERE id = $1 FOR UPDATE', [step.caseId]);
  if ((await reportedLate(tx, [stepId])).has(stepId)) {
    throw new WrongStateError('The step', 'said to be late', 'a step of which the clinic has decided');
  }
  const time = { startsAt: step.startsAt.toISOString(), endsAt: readyAt };
  const id = await noteDisturbance(tx, actor, { what: 'lab-step', id: stepId, ...time, reason }, now);
  const { homeClinicId } = await tx.findOneByOrFail(TreatmentCase, { id: step.caseId });
  const about = { kind: 'lab-step-late', caseId: step.caseId, alertId: null };
  await notifyColleagues(tx, actor.organisationId, about, { recipient: 'clinic', clinicId: homeClinicId }, now);
  const affected = await findAffected(tx, lossOf(await tx.findOneByOrFail(Disturbance, { id }), step), now);
  return {
    step: await viewLabStep(tx, actor, stepId, now),
    cases: affected.length,
    visits: affected.reduce((sum, { appointmentIds }) => sum + appointmentIds.length, 0),
  };
}
