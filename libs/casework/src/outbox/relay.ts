import { JobUnknownError, type Enqueuer } from '@archwright/jobs';
import { inOrganisation, markDispatched, takeDueOutbox, type Outbox } from '@archwright/records';
import type { DataSource, EntityManager } from 'typeorm';
import { ZodError } from 'zod';

const AT_ONCE = 100;
/** What this version does not know is left to a newer one, which may run beside it during a roll-out. */
const POSTPONED_MS = 60_000;

export interface Relayed {
  readonly dispatched: number;
  /** Rows that name no job of this version, or a payload of another shape; asked again in a minute. */
  readonly postponed: number;
  /** More may be due. */
  readonly isFull: boolean;
}

/**
 * Moves what is due from one organisation's outbox to the queues. Two relays at once take different rows; after a kill
 * between queue and commit the job is added again, under the same key, and what it does stands once in the database.
 */
export function relayOutbox(
  db: DataSource,
  enqueuer: Pick<Enqueuer, 'enqueue'>,
  organisationId: string,
  now: Date,
): Promise<Relayed> {
  return inOrganisation(db, organisationId, async (tx) => {
    const rows = await takeDueOutbox(tx, now, AT_ONCE);
    const dispatched: string[] = [];
    const postponed: string[] = [];
    for (const row of rows) {
      const isAdded = await added(enqueuer, row);
      (isAdded ? dispatched : postponed).push(row.id);
    }
    if (dispatched.length > 0) await markDispatched(tx, dispatched, now);
    if (postponed.length > 0) await postpone(tx, postponed, now);
    return { dispatched: dispatched.length, postponed: postponed.length, isFull: rows.length === AT_ONCE };
  });
}

async function added(enqueuer: Pick<Enqueuer, 'enqueue'>, { kind, payload, requestId }: Outbox): Promise<boolean> {
  try {
    await enqueuer.enqueue(kind, payload, { requestId });
    return true;
  } catch (error) {
    if (error instanceof JobUnknownError || error instanceof ZodError) return false;
    throw error;
  }
}

async function postpone(tx: EntityManager, ids: readonly string[], now: Date): Promise<void> {
  await tx.query('UPDATE outbox SET due_at = $2, attempts = attempts + 1 WHERE id = ANY ($1::uuid[])', [
    ids,
    new Date(now.getTime() + POSTPONED_MS),
  ]);
}
