import { LabStep, leaveBatches, release } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { isMovable } from '../planning/replan-basis.js';
import { reconcileReminders } from '../reminders/schedule.js';
import { endHold } from './end-hold.js';
import { cancelVisits, giveUpSteps } from './give-up-visits.js';
import { lockCase } from './locked-case.js';

/**
 * Frees everything that a case that stops has booked ahead: visits, held offers, and laboratory work not yet begun; with
 * `stopAll` begun work stops as well and is discarded. Reminders of the visits are withdrawn and the patient told, unless
 * the patient has died. State, version and history of the case are the caller's.
 *
 * @returns the visits that were cancelled
 */
export async function giveUpFuture(
  tx: EntityManager,
  actor: Actor,
  caseId: string,
  { reason, stopAll }: { readonly reason: string; readonly stopAll: boolean },
  now: Date,
): Promise<string[]> {
  const before = await lockCase(tx, actor, caseId);
  if (before.hold !== null) await endHold(tx, before.hold, 'released', now);
  const locked = before.hold === null ? before : await lockCase(tx, actor, caseId);
  const future = locked.bookings.filter((booking) => isMovable(booking, now));
  const ids = future.map(({ appointment }) => appointment.id);
  await cancelVisits(tx, future, { state: 'cancelled', reason });
  await giveUpSteps(
    tx,
    locked,
    locked.loaded.chain.stages.map(({ code }) => code),
    now,
  );
  if (stopAll) await stopBegunWork(tx, locked.loaded.rows.steps, reason);
  if (ids.length > 0) await reconcileReminders(tx, ids, now);
  return ids;
}

async function stopBegunWork(tx: EntityManager, steps: readonly LabStep[], reason: string): Promise<void> {
  const ids = steps.filter(({ state }) => state === 'started' || state === 'paused').map(({ id }) => id);
  if (ids.length === 0) return;
  await leaveBatches(tx, ids);
  await release(tx, { labStepIds: ids });
  await tx.update(LabStep, { id: In(ids) }, { state: 'discarded', stateReason: reason, version: () => 'version + 1' });
}
