import type { DispatchStep, LabStepAction } from '@archwright/contracts';
import { requireVersion } from '@archwright/platform';
import { LabStep, TreatmentCase, appendCaseEvent, leaveBatches, recordAudit, release } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { NotYoursError, RecordNotFoundError, WrongStateError } from '../errors.js';
import { notifyColleagues } from '../reminders/colleague-notice.js';
import { requireLaboratory } from './bench-steps.js';
import { viewLabStep } from './dispatch.js';
import { askQuestion } from './questions.js';
import { knowSteps } from './waits-for.js';

type State = LabStep['state'];

/** From which states each action may be taken. */
const FROM: Readonly<Record<LabStepAction['action'], readonly State[]>> = {
  start: ['planned', 'ready', 'paused'],
  pause: ['started'],
  finish: ['started'],
  reject: ['planned', 'ready', 'started', 'paused'],
  ask: ['planned', 'ready', 'started', 'paused'],
};

/** Past tense, for the case's history. */
const EVENT: Readonly<Record<LabStepAction['action'], string>> = {
  start: 'lab-step-started',
  pause: 'lab-step-paused',
  finish: 'lab-step-finished',
  reject: 'lab-step-rejected',
  ask: 'lab-question-asked',
};

/**
 * What the bench does with a step: starts, pauses or finishes it, rejects the work, or asks the clinician, which stops
 * its clock until the answer.
 *
 * @throws {WrongStateError} when the step's state does not allow it, or it waits for something
 */
export async function actOnLabStep(
  tx: EntityManager,
  actor: Actor,
  stepId: string,
  { version, ...given }: LabStepAction & { version: number },
  now: Date,
): Promise<DispatchStep> {
  const { userId } = actor;
  if (userId === null) throw new NotYoursError('Work at the bench is done by a person.');
  const step = await lockStep(tx, actor, stepId);
  requireVersion(version, step.version);
  const accepted = FROM[given.action];
  if (!accepted.includes(step.state)) throw new WrongStateError('The step', step.state, accepted.join(', '));
  const change = await changeOf(tx, { ...actor, userId }, step, given, now);
  await tx.update(LabStep, { id: stepId }, { ...change, version: step.version + 1 });
  await note(tx, { ...actor, userId }, step, given, now);
  return viewLabStep(tx, actor, stepId, now);
}

/** The case first, as everything that changes it does, then the step. */
async function lockStep(tx: EntityManager, actor: Actor, stepId: string): Promise<LabStep> {
  const seen = await tx.findOneBy(LabStep, { id: stepId });
  if (seen?.laboratoryId == null) throw new RecordNotFoundError('laboratory step', stepId);
  await requireLaboratory(tx, actor, seen.laboratoryId);
  await tx.query('SELECT FROM treatment_case WHERE id = $1 FOR UPDATE', [seen.caseId]);
  return tx.findOneOrFail(LabStep, { where: { id: stepId }, lock: { mode: 'pessimistic_write' } });
}

async function changeOf(
  tx: EntityManager,
  actor: Actor & { readonly userId: string },
  step: LabStep,
  given: LabStepAction,
  now: Date,
): Promise<Partial<LabStep>> {
  switch (given.action) {
    case 'start':
      await requireMayBegin(tx, step, now);
      return { state: 'started', startedAt: step.startedAt ?? now };
    case 'pause':
      return { state: 'paused' };
    case 'finish':
      return { state: 'finished', finishedAt: now };
    case 'reject':
      await giveBack(tx, actor, step, now);
      return { state: 'rejected', stateReason: given.reason, batchId: null };
    case 'ask':
      await askQuestion(tx, actor, step, given.question, now);
      return step.state === 'started' ? { state: 'paused' } : {};
  }
}

async function requireMayBegin(tx: EntityManager, step: LabStep, now: Date): Promise<void> {
  const waitsFor = (await knowSteps(tx, step.caseId, now)).waitsFor(step);
  if (waitsFor !== null) throw new WrongStateError('The step', `waiting for: ${waitsFor}`, 'a step that may begin');
}

/** Rejected work keeps no bench; the clinic decides how it goes on. */
async function giveBack(tx: EntityManager, actor: Actor, step: LabStep, now: Date): Promise<void> {
  await leaveBatches(tx, [step.id]);
  await release(tx, { labStepIds: [step.id] });
  const { homeClinicId } = await tx.findOneByOrFail(TreatmentCase, { id: step.caseId });
  const about = { kind: 'lab-step-rejected', caseId: step.caseId, alertId: null };
  await notifyColleagues(tx, actor.organisationId, about, { recipient: 'clinic', clinicId: homeClinicId }, now);
}

async function note(
  tx: EntityManager,
  { userId }: Actor,
  { id, caseId, code, round }: LabStep,
  { action }: LabStepAction,
  now: Date,
): Promise<void> {
  const body = { labStepId: id, code, round };
  await appendCaseEvent(tx, { caseId, kind: EVENT[action], body, actorId: userId, at: now });
  await recordAudit(tx, {
    actorId: userId,
    action: `${action}-lab-step`,
    subjectKind: 'lab-step',
    subjectId: id,
    details: body,
    at: now,
  });
}
