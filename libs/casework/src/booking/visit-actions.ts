import type { VisitAction } from '@archwright/contracts';
import { changeStageState, type StageState } from '@archwright/protocol';
import { requireVersion } from '@archwright/platform';
import { Appointment, AppointmentStage, Stage, appendCaseEvent, recordAudit } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { RecordNotFoundError, WrongStateError } from '../errors.js';
import { requireClinic } from '../planning/scope.js';
import { askToCall } from '../reminders/ask-to-call.js';
import { reconcileReminders } from '../reminders/schedule.js';
import { told } from '../tell.js';
import { cancelVisits } from './give-up-visits.js';
import { raiseCaseVersion } from './settle.js';

type Action = VisitAction['action'];

const ACCEPTED: Readonly<Record<Action, readonly Appointment['state'][]>> = {
  arrive: ['booked'],
  'undo-arrival': ['arrived'],
  start: ['booked', 'arrived'],
  finish: ['in-progress'],
  miss: ['booked', 'arrived'],
};
const HAPPENED: Readonly<Record<Action, string>> = {
  arrive: 'patient-arrived',
  'undo-arrival': 'arrival-undone',
  start: 'visit-started',
  finish: 'visit-finished',
  miss: 'visit-missed',
};

/**
 * What happens on the day: the patient arrives, the visit starts and finishes, or the patient does not come. A missed
 * visit waits to be planned again, and the call list asks for a call.
 *
 * @throws {WrongStateError} when the visit is not where the action may follow; nobody misses a visit before its start
 */
export async function actOnVisit(
  tx: EntityManager,
  actor: Actor,
  appointmentId: string,
  { action, version }: VisitAction & { version: number },
  now: Date,
): Promise<void> {
  const visit = await tx.findOne(Appointment, { where: { id: appointmentId }, lock: { mode: 'pessimistic_write' } });
  if (visit === null) throw new RecordNotFoundError('appointment', appointmentId);
  requireClinic(actor, [visit.clinicId], 'appointment', appointmentId);
  requireVersion(version, visit.version);
  if (!ACCEPTED[action].includes(visit.state)) {
    throw new WrongStateError('The visit', visit.state, ACCEPTED[action].join(' or '));
  }
  if (action === 'miss' && visit.startsAt > now) {
    throw new WrongStateError('The visit', 'yet to begin', 'past its start, or moved or cancelled before');
  }
  const stages = await stagesOf(tx, appointmentId);
  await change(tx, { visit, stages }, action, now);
  for (const caseId of new Set(stages.map((stage) => stage.caseId))) {
    const body = { appointmentId, stage: stages.find((stage) => stage.caseId === caseId)?.code };
    await appendCaseEvent(tx, { caseId, kind: HAPPENED[action], body, actorId: actor.userId, at: now });
  }
  await recordAudit(tx, {
    actorId: actor.userId,
    action: `visit-${action}`,
    subjectKind: 'appointment',
    subjectId: appointmentId,
    details: {},
    at: now,
  });
}

async function stagesOf(tx: EntityManager, appointmentId: string): Promise<Stage[]> {
  const links = await tx.findBy(AppointmentStage, { appointmentId });
  return tx.findBy(Stage, { id: In(links.map(({ stageId }) => stageId)) });
}

interface VisitWithStages {
  readonly visit: Appointment;
  readonly stages: readonly Stage[];
}

async function change(tx: EntityManager, given: VisitWithStages, action: Action, now: Date): Promise<void> {
  const { id, version } = given.visit;
  const save = (fields: Partial<Appointment>) => tx.update(Appointment, { id }, { ...fields, version: version + 1 });
  switch (action) {
    case 'arrive':
      await save({ state: 'arrived', arrivedAt: now });
      return;
    case 'undo-arrival':
      await save({ state: 'booked', arrivedAt: null });
      return;
    case 'start':
      await save({ state: 'in-progress', arrivedAt: given.visit.arrivedAt ?? now, startedAt: now });
      await beginStages(tx, given.stages);
      return;
    case 'finish':
      await save({ state: 'completed', finishedAt: now });
      return;
    case 'miss':
      await miss(tx, given, now);
  }
}

/** A planned stage is ready when its visit begins: what it needs is looked at by its gates. */
async function beginStages(tx: EntityManager, stages: readonly Stage[]): Promise<void> {
  for (const { id, state, version } of stages) {
    if (state === 'in-progress') continue;
    const ready: StageState = state === 'planned' ? changeStageState(state, 'ready') : state;
    await tx.update(Stage, { id }, { state: changeStageState(ready, 'in-progress'), version: version + 1 });
  }
}

async function miss(tx: EntityManager, { visit, stages }: VisitWithStages, now: Date): Promise<void> {
  const bookings = stages.map((stage) => ({ stage, appointment: visit }));
  await cancelVisits(tx, bookings, { state: 'missed', reason: 'The patient did not come.' });
  await reconcileReminders(tx, [visit.id], now);
  for (const caseId of new Set(stages.map((stage) => stage.caseId))) {
    await raiseCaseVersion(tx, caseId);
    const about = { patientId: visit.patientId, caseId, appointmentId: visit.id };
    await askToCall(tx, about, told('call-missed'), now);
  }
}
