import { Appointment, AppointmentStage, LabStep, Stage, leaveBatches, release } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { loadPlan, type StoredPlan } from '../planning/stored-plan.js';
import { applyPlan } from './apply-plan.js';

/**
 * Books the stored plans of several cases, all of them or none. All time that moves is given back before any is taken, so
 * that cases can change places.
 *
 * @throws {PlanStaleError} when a case has changed since, or some of the time has been taken
 */
export async function bookTogether(
  tx: EntityManager,
  actor: Actor,
  planIds: readonly string[],
  now: Date,
): Promise<void> {
  const plans: StoredPlan[] = [];
  for (const id of planIds) plans.push(await loadPlan(tx, id, ['proposal']));
  const caseIds = plans.map(({ caseId }) => caseId);
  await tx.query('SELECT FROM treatment_case WHERE id = ANY ($1::uuid[]) ORDER BY id FOR UPDATE', [caseIds]);
  for (const plan of plans) await giveBack(tx, plan);
  for (const plan of plans) await applyPlan(tx, actor, plan, now);
}

async function giveBack(tx: EntityManager, { caseId, plan }: StoredPlan): Promise<void> {
  const moving = plan.visits.filter(({ isKept }) => !isKept).map(({ stage }) => stage);
  const stages = await tx.findBy(Stage, { caseId, code: In(moving) });
  const links = await tx.findBy(AppointmentStage, { stageId: In(stages.map(({ id }) => id)) });
  const visits = await tx.findBy(Appointment, {
    id: In(links.map(({ appointmentId }) => appointmentId)),
    state: In(['booked', 'provisional']),
  });
  const replanned = plan.labSteps.filter(({ isKept }) => !isKept).map(({ code }) => code);
  const steps = await tx.findBy(LabStep, { caseId, code: In(replanned), state: In(['planned', 'ready']) });
  const labStepIds = steps.map(({ id }) => id);
  await leaveBatches(tx, labStepIds);
  await release(tx, { appointmentIds: visits.map(({ id }) => id), labStepIds });
}
