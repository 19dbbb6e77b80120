import type { ConfirmHold } from '@archwright/contracts';
import {
  Appointment,
  CourierLeg,
  Hold,
  HoldNotActiveError,
  LabStep,
  Organisation,
  appendCaseEvent,
  confirmHeldTime,
  recordAudit,
} from '@archwright/records';
import { In, Not, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { RecordNotFoundError } from '../errors.js';
import { loadPlan, requireHash, type StoredPlan } from '../planning/stored-plan.js';
import { scheduleReminders } from '../reminders/schedule.js';
import { openOwnRuns } from './batches.js';
import { lockCase, type LockedCase } from './locked-case.js';
import { dropPlannedLegs } from './place-lab-work.js';
import { openSignedWork, planSteps, raiseCaseVersion, settleVisits } from './settle.js';

/** Which part of a hold becomes booked, and which stays provisional. */
interface Parts {
  readonly firmVisits: readonly string[];
  readonly laterVisits: readonly string[];
  readonly firmSteps: readonly string[];
  readonly laterSteps: readonly string[];
  readonly laterStages: readonly string[];
  /** False when the rest of a hold is confirmed whose next visits were booked before. */
  readonly isFirst: boolean;
}

/**
 * Books what a hold keeps, exactly the plan that was shown: all of it, or the next visits with the rest provisional.
 *
 * @returns the id of the case
 * @throws {PlanStaleError} when another plan is meant
 * @throws {HoldNotActiveError} when the hold has run out or was given back; ask for offers again
 */
export async function confirmHold(
  tx: EntityManager,
  actor: Actor,
  holdId: string,
  { planHash, firm }: ConfirmHold,
  now: Date,
): Promise<string> {
  const found = await tx.findOneBy(Hold, { id: holdId });
  if (found === null) throw new RecordNotFoundError('hold', holdId);
  const locked = await lockCase(tx, actor, found.caseId);
  if (locked.hold?.id !== holdId) throw new HoldNotActiveError(holdId, await stateOf(tx, holdId));
  const plan = await loadPlan(tx, found.planId, ['offer']);
  requireHash(plan, planHash);
  const parts = await partsOf(tx, locked, holdId, firm);
  if (parts.isFirst) await dropPlannedLegs(tx, found.caseId, now);
  await bookTime(tx, actor, holdId, parts, now);
  await openOwnRuns(tx, locked, parts.firmSteps, now);
  await openSignedWork(tx, locked, now);
  await tx.update(CourierLeg, { holdId, beforeStage: Not(In([...parts.laterStages])) }, { holdId: null });
  await raiseCaseVersion(tx, found.caseId);
  await note(tx, actor, plan, { holdId, parts }, now);
  await scheduleReminders(tx, parts.firmVisits, now);
  return found.caseId;
}

const stateOf = async (tx: EntityManager, id: string): Promise<string> =>
  (await tx.findOneByOrFail(Hold, { id })).state;

/** The first visits of the hold, and the laboratory work that leads to them. */
async function partsOf(
  tx: EntityManager,
  { loaded, bookings }: LockedCase,
  holdId: string,
  firm: ConfirmHold['firm'],
): Promise<Parts> {
  const visits = await tx.find(Appointment, { where: { holdId }, order: { startsAt: 'ASC', id: 'ASC' } });
  const steps = await tx.findBy(LabStep, { holdId });
  const ids = visits.map(({ id }) => id);
  const firmVisits = firm === 'all' ? ids : ids.slice(0, firm);
  const later = new Set(ids.slice(firmVisits.length));
  const laterStages = new Set(
    bookings.filter(({ appointment }) => later.has(appointment.id)).map(({ stage }) => stage.code),
  );
  const isLater = ({ code }: LabStep) =>
    laterStages.has(loaded.chain.steps.find((step) => step.code === code)?.beforeStage ?? '');
  return {
    firmVisits,
    laterVisits: [...later],
    firmSteps: steps.filter((step) => !isLater(step)).map(({ id }) => id),
    laterSteps: steps.filter(isLater).map(({ id }) => id),
    laterStages: [...laterStages],
    isFirst: visits.some(({ state }) => state === 'held'),
  };
}

async function bookTime(tx: EntityManager, actor: Actor, holdId: string, parts: Parts, now: Date): Promise<void> {
  const { firmVisits, laterVisits, firmSteps, laterSteps } = parts;
  if (laterVisits.length === 0) await confirmHeldTime(tx, holdId, now);
  else {
    const { settings } = await tx.findOneByOrFail(Organisation, { id: actor.organisationId });
    const restUntil = new Date(now.getTime() + settings.provisionalHoldMinutes * 60_000);
    await confirmHeldTime(tx, holdId, now, { appointmentIds: firmVisits, labStepIds: firmSteps, restUntil });
  }
  await settleVisits(tx, firmVisits, 'booked', null);
  await settleVisits(tx, laterVisits, 'provisional', holdId);
  await planSteps(tx, firmSteps, null);
  await planSteps(tx, laterSteps, holdId);
}

async function note(
  tx: EntityManager,
  actor: Actor,
  plan: StoredPlan,
  { holdId, parts }: { holdId: string; parts: Parts },
  now: Date,
): Promise<void> {
  const body = { planId: plan.id, holdId, booked: parts.firmVisits, provisional: parts.laterVisits };
  await appendCaseEvent(tx, { caseId: plan.caseId, kind: 'plan-confirmed', body, actorId: actor.userId, at: now });
  await recordAudit(tx, {
    actorId: actor.userId,
    action: 'confirm-hold',
    subjectKind: 'hold',
    subjectId: holdId,
    details: { planId: plan.id, planHash: plan.planHash },
    at: now,
  });
}
