import type { EntityManager } from 'typeorm';
import { uuidv7 } from '../uuidv7.js';
import { claim, release } from './claim.js';
import { Batch, BatchMember, LabStep } from './lab-step.entity.js';
import { BatchFullError } from './occupancy-errors.js';

export interface NewBatch {
  readonly placeId: string;
  readonly kind: Batch['kind'];
  readonly startsAt: Date;
  readonly endsAt: Date;
  /** Units that one run takes, such as flasks. */
  readonly size: number;
}

export interface BatchJoiner {
  readonly batchId: string;
  readonly labStepId: string;
  readonly units: number;
}

/**
 * Books a place for a run that several cases share.
 *
 * @returns the batch's id
 * @throws {OccupancyConflictError} when the place is taken
 */
export async function openBatch(tx: EntityManager, batch: NewBatch, now: Date): Promise<string> {
  const id = uuidv7();
  await tx.insert(Batch, { ...batch, id, used: 0 });
  const { placeId, startsAt, endsAt } = batch;
  await claim(tx, [{ resourceId: placeId, startsAt, endsAt, purpose: 'lab', batchId: id }], now);
  return id;
}

/**
 * Puts a lab step into a run. Joiners of one batch wait for each other.
 *
 * @throws {BatchFullError} when its units don't fit any more, or the batch is gone
 */
export async function joinBatch(tx: EntityManager, { batchId, labStepId, units }: BatchJoiner): Promise<void> {
  const batch = await tx.findOne(Batch, { where: { id: batchId }, lock: { mode: 'pessimistic_write' } });
  const free = batch === null ? 0 : batch.size - batch.used;
  if (units > free) throw new BatchFullError(batchId, free, units);
  await tx.increment(Batch, { id: batchId }, 'used', units);
  await tx.insert(BatchMember, { id: uuidv7(), batchId, labStepId, units });
  await tx.update(LabStep, { id: labStepId }, { batchId });
}

/** Takes lab steps out of their runs; a run that nobody is left in gives its place back. */
export async function leaveBatches(tx: EntityManager, labStepIds: readonly string[]): Promise<void> {
  const batches: { id: string }[] = await tx.query(
    `SELECT id FROM batch WHERE id IN (SELECT batch_id FROM batch_member WHERE lab_step_id = ANY ($1::uuid[]))
     ORDER BY id FOR UPDATE`,
    [labStepIds],
  );
  if (batches.length === 0) return;
  const batchIds = batches.map(({ id }) => id);
  await tx.query('DELETE FROM batch_member WHERE lab_step_id = ANY ($1::uuid[])', [labStepIds]);
  await tx.query('UPDATE lab_step SET batch_id = NULL WHERE id = ANY ($1::uuid[])', [labStepIds]);
  await tx.query(
    `UPDATE batch SET used = (SELECT coalesce(sum(units), 0) FROM batch_member m WHERE m.batch_id = batch.id)
     WHERE id = ANY ($1::uuid[])`,
    [batchIds],
  );
  const empty: { id: string }[] = await tx.query('SELECT id FROM batch WHERE id = ANY ($1::uuid[]) AND used = 0', [
    batchIds,
  ]);
  await release(tx, { batchIds: empty.map(({ id }) => id) });
  await tx.query('DELETE FROM batch WHERE id = ANY ($1::uuid[])', [empty.map(({ id }) => id)]);
}
