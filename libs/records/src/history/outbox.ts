import { currentRequestId } from '@archwright/platform';
import { In, IsNull, LessThanOrEqual, type EntityManager } from 'typeorm';
import { uuidv7 } from '../uuidv7.js';
import { Outbox } from './history.entity.js';

/**
 * Notes a side effect in the transaction of its cause: it happens if and only if that commits.
 *
 * @param kind name of a job
 * @param payload ids only
 */
export async function enqueueOutbox(
  tx: EntityManager,
  kind: string,
  payload: Readonly<Record<string, string>>,
  dueAt: Date,
): Promise<void> {
  await tx.insert(Outbox, { id: uuidv7(), kind, payload, dueAt, requestId: currentRequestId() });
}

/** Side effects that are due, oldest first, locked to this transaction; those that another relay holds are passed over. */
export function takeDueOutbox(tx: EntityManager, now: Date, limit: number): Promise<Outbox[]> {
  return tx.find(Outbox, {
    where: { dispatchedAt: IsNull(), dueAt: LessThanOrEqual(now) },
    order: { dueAt: 'ASC', id: 'ASC' },
    take: limit,
    lock: { mode: 'pessimistic_write', onLocked: 'skip_locked' },
  });
}

export async function markDispatched(tx: EntityManager, ids: readonly string[], now: Date): Promise<void> {
  await tx.update(Outbox, { id: In([...ids]) }, { dispatchedAt: now, attempts: () => 'attempts + 1' });
}
