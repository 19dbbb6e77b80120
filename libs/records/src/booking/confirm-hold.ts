import type { EntityManager } from 'typeorm';
import { ownedTimes } from './claim.js';
import { HoldNotActiveError } from './occupancy-errors.js';
import { lockResourceDays } from './occupancy-locks.js';
import type { Hold } from '../case/plan.entity.js';

/** The part of a hold that becomes firm now; the rest stays provisional. */
export interface FirmPart {
  readonly appointmentIds: readonly string[];
  readonly labStepIds: readonly string[];
  readonly restUntil: Date;
}

/**
 * Turns held time into booked time: all of it, or `part` with the rest held on until `part.restUntil`. The states of
 * visits and lab steps are the caller's.
 *
 * @throws {HoldNotActiveError} when the hold is unknown, over, or has run out at `now`
 */
export async function confirmHeldTime(tx: EntityManager, holdId: string, now: Date, part?: FirmPart): Promise<void> {
  await lockResourceDays(tx, await ownedTimes(tx, { holdIds: [holdId] }));
  // Whoever drops an expired hold marks it under the same locks: an active one has all its time.
  const [hold]: Pick<Hold, 'state'>[] = await tx.query(
    `SELECT CASE WHEN state = 'active' AND expires_at <= $2 THEN 'expired' ELSE state END AS state
     FROM hold WHERE id = $1 FOR UPDATE`,
    [holdId, now],
  );
  if (hold?.state !== 'active') throw new HoldNotActiveError(holdId, hold?.state ?? 'unknown');
  await tx.query(
    `UPDATE occupancy SET hold_id = NULL, held_until = NULL
     WHERE hold_id = $1 AND ($2::uuid[] IS NULL OR appointment_id = ANY ($2) OR lab_step_id = ANY ($3))`,
    [holdId, part?.appointmentIds ?? null, part?.labStepIds ?? null],
  );
  if (part === undefined) {
    await tx.query(`UPDATE hold SET state = 'confirmed', version = version + 1 WHERE id = $1`, [holdId]);
    return;
  }
  await tx.query('UPDATE occupancy SET held_until = $2 WHERE hold_id = $1', [holdId, part.restUntil]);
  await tx.query(`UPDATE hold SET kind = 'provisional', expires_at = $2, version = version + 1 WHERE id = $1`, [
    holdId,
    part.restUntil,
  ]);
}
