import type { CreateHold, HoldView } from '@archwright/contracts';
import { Hold, Organisation, appendCaseEvent, claim, leaveBatches, recordAudit, uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { RecordNotFoundError } from '../errors.js';
import { stayingBeside } from '../planning/bookings.js';
import { loadPlan, requireCurrent, type StoredPlan } from '../planning/stored-plan.js';
import { loadPlanLabels, toPlanView } from '../planning/plan-view.js';
import { joinChosenRuns } from './batches.js';
import { stepClaims, visitClaims } from './claims.js';
import { endHold } from './end-hold.js';
import { lockCase, type LockedCase } from './locked-case.js';
import { placeLegs, placeSteps } from './place-lab-work.js';
import { placeVisits } from './place-visits.js';

/**
 * Keeps everything that an offer needs for one case: minutes while someone is on the telephone, or a day or two while
 * someone is asked. A hold that the case had before ends with it.
 *
 * @throws {PlanStaleError} when the case has changed since the offer
 * @throws {OccupancyConflictError} {@link BatchFullError} when somebody else was faster; roll back and ask for offers again
 */
export async function holdOffer(
  tx: EntityManager,
  actor: Actor,
  caseId: string,
  { offerId, kind, minutes }: CreateHold,
  now: Date,
): Promise<HoldView> {
  const plan = await loadPlan(tx, offerId, ['offer']);
  if (plan.caseId !== caseId) throw new RecordNotFoundError('offer', offerId);
  const before = await lockCase(tx, actor, caseId);
  requireCurrent(plan, before.treatmentCase.version);
  if (before.hold !== null) await endHold(tx, before.hold, 'released', now);
  const locked = before.hold === null ? before : await lockCase(tx, actor, caseId);
  const hold = await openHold(
    tx,
    actor,
    plan,
    { kind, minutes: minutes ?? (await usualMinutes(tx, actor, kind)) },
    now,
  );
  await keepTime(tx, locked, plan, hold, now);
  const body = { holdId: hold.id, planId: plan.id, kind, until: hold.expiresAt.toISOString() };
  await appendCaseEvent(tx, { caseId, kind: 'offer-held', body, actorId: actor.userId, at: now });
  await recordAudit(tx, {
    actorId: actor.userId,
    action: 'hold-offer',
    subjectKind: 'hold',
    subjectId: hold.id,
    details: { planHash: plan.planHash },
    at: now,
  });
  return holdViewOf(tx, hold, plan);
}

async function usualMinutes(tx: EntityManager, { organisationId }: Actor, kind: Hold['kind']): Promise<number> {
  const { settings } = await tx.findOneByOrFail(Organisation, { id: organisationId });
  return kind === 'phone' ? settings.phoneHoldMinutes : settings.provisionalHoldMinutes;
}

type OpenedHold = Pick<Hold, 'id' | 'caseId' | 'kind' | 'state' | 'expiresAt'>;

async function openHold(
  tx: EntityManager,
  actor: Actor,
  { id: planId, caseId }: StoredPlan,
  { kind, minutes }: { kind: Hold['kind']; minutes: number },
  now: Date,
): Promise<OpenedHold> {
  const expiresAt = new Date(now.getTime() + minutes * 60_000);
  const hold = { id: uuidv7(), caseId, planId, kind, state: 'active' as const, expiresAt };
  await tx.insert(Hold, { ...hold, createdAt: now, createdBy: actor.userId });
  return hold;
}

async function keepTime(
  tx: EntityManager,
  locked: LockedCase,
  { plan }: StoredPlan,
  { id, expiresAt }: OpenedHold,
  now: Date,
): Promise<void> {
  const hold = { id, until: expiresAt };
  const placed = plan.visits.filter(({ isKept }) => !isKept);
  const kept = stayingBeside(locked.bookings, placed);
  const visits = await placeVisits(tx, locked, placed, hold, now);
  const steps = await placeSteps(
    tx,
    locked,
    plan.labSteps.filter(({ isKept }) => !isKept),
    hold,
  );
  // Work that waits for a visit to be booked anew may still have its former time.
  const labStepIds = steps.map(({ labStepId }) => labStepId);
  await leaveBatches(tx, labStepIds);
  await claim(tx, [...visitClaims(visits.toClaim, kept, locked.patient), ...stepClaims(steps)], now, { labStepIds });
  await joinChosenRuns(tx, steps);
  await placeLegs(tx, locked, plan, id, now);
}

async function holdViewOf(tx: EntityManager, hold: OpenedHold, { planHash, plan }: StoredPlan): Promise<HoldView> {
  const { id, caseId, kind, state, expiresAt } = hold;
  const labels = await loadPlanLabels(tx, [plan]);
  return { id, caseId, kind, state, expiresAt: expiresAt.toISOString(), planHash, plan: toPlanView(plan, labels) };
}
