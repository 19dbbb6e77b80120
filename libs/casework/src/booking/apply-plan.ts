import { appendCaseEvent, claim, leaveBatches, recordAudit } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { stayingBeside } from '../planning/bookings.js';
import { requireCurrent, type StoredPlan } from '../planning/stored-plan.js';
import { reconcileReminders, scheduleReminders } from '../reminders/schedule.js';
import { asStale } from './as-stale.js';
import { joinChosenRuns, openOwnRuns } from './batches.js';
import { stepClaims, visitClaims } from './claims.js';
import { endHold } from './end-hold.js';
import { cancelVisits, giveUpSteps } from './give-up-visits.js';
import { lockCase, type LockedCase } from './locked-case.js';
import { placeLegs, placeSteps } from './place-lab-work.js';
import { placeVisits } from './place-visits.js';
import { openSignedWork, planStages, planSteps, raiseCaseVersion } from './settle.js';

/** What applying a plan changed. */
export interface AppliedPlan {
  readonly newAppointmentIds: readonly string[];
  readonly movedAppointmentIds: readonly string[];
}

/**
 * Books exactly a stored plan: moves visits in their place, adds new ones, takes away those it says, plans the laboratory
 * work with its runs and ways, and has the patient told. All of it or nothing.
 *
 * @throws {PlanStaleError} when the case has changed since, or some of the time has been taken
 */
export async function applyPlan(tx: EntityManager, actor: Actor, plan: StoredPlan, now: Date): Promise<AppliedPlan> {
  const locked = await lockWithoutHold(tx, actor, plan.caseId, now);
  requireCurrent(plan, locked.treatmentCase.version);
  const cancelledIds = await takeAway(tx, locked, plan, now);
  const remaining = {
    ...locked,
    bookings: locked.bookings.filter(({ appointment }) => !cancelledIds.includes(appointment.id)),
  };
  const { newIds, movedIds, stepIds } = await takeTime(tx, remaining, plan, now);
  await planStages(tx, [...newIds, ...movedIds]);
  await openOwnRuns(tx, locked, stepIds, now);
  await openSignedWork(tx, locked, now);
  await raiseCaseVersion(tx, plan.caseId);
  await note(tx, actor, plan, { newIds, movedIds }, now);
  if (newIds.length > 0) await scheduleReminders(tx, newIds, now);
  const changedIds = [...movedIds, ...cancelledIds];
  if (changedIds.length > 0) await reconcileReminders(tx, changedIds, now);
  return { newAppointmentIds: newIds, movedAppointmentIds: movedIds };
}

/** What is merely held for the case on the telephone ends: the plan was made without it. */
async function lockWithoutHold(tx: EntityManager, actor: Actor, caseId: string, now: Date): Promise<LockedCase> {
  const locked = await lockCase(tx, actor, caseId);
  const isOnlyHeld = locked.bookings.some(({ appointment }) => appointment.state === 'held');
  if (locked.hold === null || !isOnlyHeld) return locked;
  await endHold(tx, locked.hold, 'released', now);
  return lockCase(tx, actor, caseId);
}

async function takeAway(tx: EntityManager, locked: LockedCase, { change }: StoredPlan, now: Date): Promise<string[]> {
  const cancelled = locked.bookings.filter(({ appointment }) =>
    change.cancelledAppointmentIds.includes(appointment.id),
  );
  if (cancelled.length > 0)
    await cancelVisits(tx, cancelled, { state: 'cancelled', reason: change.reason ?? 'No longer needed.' });
  if (change.droppedStages.length > 0) await giveUpSteps(tx, locked, change.droppedStages, now);
  return cancelled.map(({ appointment }) => appointment.id);
}

interface TakenTime {
  readonly newIds: readonly string[];
  readonly movedIds: readonly string[];
  readonly stepIds: readonly string[];
}

async function takeTime(tx: EntityManager, locked: LockedCase, { plan }: StoredPlan, now: Date): Promise<TakenTime> {
  const { patient } = locked;
  if ([...plan.visits, ...plan.labSteps].every(({ isKept }) => isKept))
    return { newIds: [], movedIds: [], stepIds: [] };
  const placed = plan.visits.filter(({ isKept }) => !isKept);
  const kept = stayingBeside(locked.bookings, placed);
  const visits = await placeVisits(tx, locked, placed, null, now);
  const moving = plan.labSteps.filter(({ isKept }) => !isKept);
  const steps = await placeSteps(tx, locked, moving, null);
  const stepIds = steps.map(({ labStepId }) => labStepId);
  await leaveBatches(tx, stepIds);
  await asStale(async () => {
    await claim(tx, [...visitClaims(visits.toClaim, kept, patient), ...stepClaims(steps)], now, {
      appointmentIds: visits.movedIds,
      labStepIds: stepIds,
    });
    await joinChosenRuns(tx, steps);
  });
  await placeLegs(tx, locked, plan, null, now);
  await planSteps(
    tx,
    steps.flatMap(({ labStepId, hold }) => (hold === null ? [labStepId] : [])),
    null,
  );
  return { newIds: visits.newIds, movedIds: visits.movedIds, stepIds };
}

async function note(
  tx: EntityManager,
  actor: Actor,
  plan: StoredPlan,
  { newIds, movedIds }: Pick<TakenTime, 'newIds' | 'movedIds'>,
  now: Date,
): Promise<void> {
  const { cancelledAppointmentIds, reason } = plan.change;
  const body = { planId: plan.id, booked: newIds, moved: movedIds, cancelled: cancelledAppointmentIds, reason };
  await appendCaseEvent(tx, { caseId: plan.caseId, kind: 'plan-applied', body, actorId: actor.userId, at: now });
  await recordAudit(tx, {
    actorId: actor.userId,
    action: 'apply-plan',
    subjectKind: 'case',
    subjectId: plan.caseId,
    details: { planId: plan.id, planHash: plan.planHash },
    at: now,
  });
}
