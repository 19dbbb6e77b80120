import { Appointment, CourierLeg, Hold, LabStep, appendCaseEvent, leaveBatches, release } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { RecordNotFoundError, WrongStateError } from '../errors.js';
import { reconcileReminders } from '../reminders/schedule.js';
import { lockCase } from './locked-case.js';
import { unplanSteps } from './place-lab-work.js';

/**
 * Gives back everything that a hold kept. Visits that were merely held never were; provisional ones, which the patient
 * may know of, are cancelled.
 */
export async function endHold(
  tx: EntityManager,
  { id, caseId }: Pick<Hold, 'id' | 'caseId'>,
  state: 'released' | 'expired',
  now: Date,
): Promise<void> {
  const steps = await tx.findBy(LabStep, { holdId: id });
  const stepIds = steps.map((step) => step.id);
  await leaveBatches(tx, stepIds);
  await release(tx, { holdIds: [id] });
  await unplanSteps(tx, stepIds);
  await tx.delete(CourierLeg, { holdId: id });
  const appointments = await tx.findBy(Appointment, { holdId: id });
  const heldIds = appointments.filter((each) => each.state === 'held').map((each) => each.id);
  await tx.delete(Appointment, { id: In(heldIds) });
  await cancelProvisional(
    tx,
    appointments.filter((each) => each.state === 'provisional').map((each) => each.id),
    now,
  );
  await tx.update(Hold, { id, state: In(['active', 'expired']) }, { state, version: () => 'version + 1' });
  await appendCaseEvent(tx, { caseId, kind: `hold-${state}`, body: { holdId: id }, actorId: null, at: now });
}

async function cancelProvisional(tx: EntityManager, ids: readonly string[], now: Date): Promise<void> {
  if (ids.length === 0) return;
  await tx.query(
    `UPDATE stage SET state = 'waiting', version = version + 1 WHERE state IN ('planned', 'ready')
       AND id IN (SELECT stage_id FROM appointment_stage WHERE appointment_id = ANY ($1::uuid[]))`,
    [ids],
  );
  await tx.update(
    Appointment,
    { id: In([...ids]) },
    { state: 'cancelled', stateReason: 'Not confirmed in time.', holdId: null, version: () => 'version + 1' },
  );
  await reconcileReminders(tx, ids, now);
}

/** @throws {RecordNotFoundError} {@link WrongStateError} when it is over already */
export async function releaseHold(tx: EntityManager, actor: Actor, holdId: string, now: Date): Promise<void> {
  const hold = await tx.findOneBy(Hold, { id: holdId });
  if (hold === null) throw new RecordNotFoundError('hold', holdId);
  await lockCase(tx, actor, hold.caseId);
  const current = await tx.findOneByOrFail(Hold, { id: holdId });
  if (current.state !== 'active') throw new WrongStateError('The hold', current.state, 'active');
  await endHold(tx, current, 'released', now);
}

/**
 * Ends holds that have run out, those included whose time another booking has already taken. Each case is locked first,
 * so that a confirmation that is under way comes first.
 *
 * @returns how many ended; call again while it equals `limit`
 */
export async function expireHolds(tx: EntityManager, actor: Actor, now: Date, limit = 50): Promise<number> {
  const due: { id: string; caseId: string }[] = await tx.query(
    `SELECT h.id, h.case_id AS "caseId" FROM hold h
     WHERE h.state = 'active' AND h.expires_at <= $1
       OR h.state = 'expired' AND (EXISTS (SELECT FROM appointment a WHERE a.hold_id = h.id)
         OR EXISTS (SELECT FROM lab_step s WHERE s.hold_id = h.id))
     ORDER BY h.expires_at, h.id LIMIT $2`,
    [now, limit],
  );
  let ended = 0;
  for (const { id, caseId } of due) {
    await lockCase(tx, actor, caseId);
    const hold = await tx.findOneByOrFail(Hold, { id });
    const isOver = hold.state === 'expired' || (hold.state === 'active' && hold.expiresAt <= now);
    if (!isOver) continue;
    await endHold(tx, hold, 'expired', now);
    ended++;
  }
  return ended;
}
