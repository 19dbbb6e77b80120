import { localDate } from '@archwright/calendar';
import type { CaseView, ChangeCaseState } from '@archwright/contracts';
import { RequestInvalidError } from '@archwright/platform';
import { changeOfCaseState, nextCaseStates, type CaseStateEffects } from '@archwright/protocol';
import { Patient, RemakeAlert, TreatmentCase, appendCaseEvent, recordAudit } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { withdrawRecalls } from '../aftercare/follow-ups.js';
import { giveUpFuture } from '../booking/give-up-future.js';
import { requireClosable } from './closing.js';
import { TO_BE_DATED_ANEW, decideTreatment, makeStoppedWorkAgain } from './go-on.js';
import { lockCaseAt } from './lock-case.js';
import { silencePatient, withdrawCalls } from './silence.js';
import { proposeTransfer, settleTransfer } from '../transfers/transfer-of-case.js';
import { viewCase } from './view-case.js';

const FINAL: readonly TreatmentCase['state'][] = ['abandoned', 'closed', 'ended-by-death'];

/**
 * Changes a case's state with all that follows from it for bookings, laboratory work and notices. A death ends every case
 * of the patient at once, and nothing is sent any more.
 *
 * @throws {IllegalTransitionError} when that state can't follow
 * @throws {WrongStateError} when the case can't be closed yet
 */
export async function changeCaseState(
  tx: EntityManager,
  actor: Actor,
  { caseId, version }: { readonly caseId: string; readonly version: number },
  body: ChangeCaseState,
  now: Date,
): Promise<CaseView> {
  const treatmentCase = await lockCaseAt(tx, actor, caseId, version);
  if (body.to === 'ended-by-death') await silence(tx, treatmentCase.patientId, now);
  await changeOne(tx, actor, treatmentCase, body, now);
  if (body.to === 'ended-by-death') await endOtherCases(tx, actor, treatmentCase, body, now);
  return viewCase(tx, actor, caseId, now);
}

/** Also those of clinics that the actor does not work at: a death is known to all of them. */
async function endOtherCases(
  tx: EntityManager,
  actor: Actor,
  { id, patientId }: TreatmentCase,
  body: ChangeCaseState,
  now: Date,
): Promise<void> {
  const others = await tx.find(TreatmentCase, {
    where: { patientId },
    order: { id: 'ASC' },
    lock: { mode: 'pessimistic_write' },
  });
  const everywhere: Actor = { ...actor, role: 'service' };
  for (const other of others) {
    if (other.id === id || !nextCaseStates(other.state).includes(body.to)) continue;
    await changeOne(tx, everywhere, other, body, now);
  }
}

async function changeOne(
  tx: EntityManager,
  actor: Actor,
  treatmentCase: TreatmentCase,
  body: ChangeCaseState,
  now: Date,
): Promise<void> {
  const { id: caseId, state: from, version } = treatmentCase;
  const effects = changeOfCaseState(from, body.to);
  requireFitting(from, body);
  if (body.to === 'closed') await requireClosable(tx, caseId, now);
  const cancelled = await stopWork(tx, actor, caseId, { effects, reason: body.reason }, now);
  if (from === 'transferred') await settleTransfer(tx, actor, treatmentCase, body, now);
  if (body.to === 'transferred') await proposeTransfer(tx, actor, treatmentCase, body, now);
  if (FINAL.includes(body.to)) await dismissAlerts(tx, actor, caseId, body.reason, now);
  if (body.to === 'abandoned') await withdrawRecalls(tx, caseId);
  if (body.to === 'open') await goOn(tx, treatmentCase, body);
  await tx.update(TreatmentCase, { id: caseId }, { ...stateFields(body, effects, now), version: version + 1 });
  await note(tx, actor, { caseId, from, body, cancelled, effects }, now);
}

/** @returns the visits that were cancelled */
async function stopWork(
  tx: EntityManager,
  actor: Actor,
  caseId: string,
  { effects, reason }: { readonly effects: CaseStateEffects; readonly reason: string },
  now: Date,
): Promise<string[]> {
  if (effects.bookings !== 'release-future') return [];
  await withdrawCalls(tx, caseId);
  return giveUpFuture(tx, actor, caseId, { reason, stopAll: effects.labWork === 'stop-all' }, now);
}

async function goOn(tx: EntityManager, { id, state }: TreatmentCase, decided: ChangeCaseState): Promise<void> {
  if (state === 'enquiry') await decideTreatment(tx, id, decided);
  else await makeStoppedWorkAgain(tx, id);
}

function stateFields({ to, reason, reviewOn }: ChangeCaseState, { recheck }: CaseStateEffects, now: Date) {
  return {
    state: to,
    stateReason: to === 'open' ? null : reason,
    reviewOn: to === 'paused' ? reviewOn : null,
    closedAt: FINAL.includes(to) ? now : null,
    ...(recheck.length > 0 ? TO_BE_DATED_ANEW : {}),
  };
}

function requireFitting(from: TreatmentCase['state'], body: ChangeCaseState): void {
  if (from === 'enquiry' && body.to === 'open') return;
  const early = (['arches', 'clinicianId', 'wishes'] as const).filter((path) => body[path] !== undefined);
  if (early.length === 0) return;
  const refusal = { problem: 'can no longer be decided', accepted: 'this only when an enquiry opens' };
  throw new RequestInvalidError(early.map((path) => ({ path, ...refusal })));
}

/** The date of death is not asked for: the day on which it was recorded stands in its place. */
async function silence(tx: EntityManager, patientId: string, now: Date): Promise<void> {
  const patient = await tx.findOneByOrFail(Patient, { id: patientId });
  await silencePatient(tx, patientId, patient.diedOn ?? localDate(now.getTime(), patient.zone));
}

/** Nothing is made again for a case that is over. */
async function dismissAlerts(
  tx: EntityManager,
  { userId }: Actor,
  caseId: string,
  reason: string,
  now: Date,
): Promise<void> {
  await tx.update(
    RemakeAlert,
    { caseId, state: In(['open', 'planned']) },
    {
      state: 'dismissed',
      decidedAt: now,
      decidedBy: userId,
      decisionReason: reason,
      version: () => 'version + 1',
    },
  );
}

async function note(
  tx: EntityManager,
  actor: Actor,
  change: {
    readonly caseId: string;
    readonly from: TreatmentCase['state'];
    readonly body: ChangeCaseState;
    readonly cancelled: readonly string[];
    readonly effects: CaseStateEffects;
  },
  now: Date,
): Promise<void> {
  const { caseId, from, body, cancelled, effects } = change;
  const { to, reason, reviewOn } = body;
  const decided = from === 'enquiry' && to === 'open';
  await appendCaseEvent(tx, {
    caseId,
    kind: decided ? 'path-decided' : 'state-changed',
    body: { from, to, reason, reviewOn, cancelled, recheck: effects.recheck },
    actorId: actor.userId,
    at: now,
  });
  await recordAudit(tx, {
    actorId: actor.userId,
    action: 'case-state-changed',
    subjectKind: 'case',
    subjectId: caseId,
    details: { from, to },
    at: now,
  });
}
