import { RefusedMailError, TemporaryMailError } from '@archwright/notices';
import { inOrganisation } from '@archwright/records';
import type { DataSource, EntityManager } from 'typeorm';

/** What became of one attempt. */
export type Outcome = { readonly state: 'sent' } | { readonly state: 'withdrawn' };

/** A reminder or a notice, while it is being sent. */
export interface Parcel<Row> {
  readonly table: 'reminder' | 'notice';
  readonly organisationId: string;
  readonly id: string;
  load(tx: EntityManager, id: string): Promise<Row | null>;
  send(tx: EntityManager, row: Row): Promise<Outcome>;
  /** After a refusal for good: a person takes over. */
  refused(tx: EntityManager, row: Row): Promise<void>;
}

/**
 * Sends what is scheduled and due, once. The attempt is counted and committed before, so that an attempt that left no
 * trace of its end shows in the count.
 *
 * Sending stands inside a transaction, which holds an advisory lock that keeps every other worker from sending the same
 * at the same time. It takes no row lock before the mail is out and only one after, so the server never has to end it
 * in favour of another; a kill between the server's yes and the commit costs one copy, under the same message id.
 *
 * @throws {TemporaryMailError} when it is to be tried again; it stays scheduled
 */
export async function sendOnce<Row>(db: DataSource, parcel: Parcel<Row>, now: Date): Promise<void> {
  const { table, organisationId, id } = parcel;
  const isDue = await inOrganisation(db, organisationId, async (tx) => {
    const counted: [unknown[], number] = await tx.query(
      `UPDATE ${table} SET attempts = attempts + 1 WHERE id = $1 AND state = 'scheduled' AND due_at <= $2`,
      [id, now],
    );
    return counted[1] === 1;
  });
  if (!isDue) return;
  const failure = await inOrganisation(db, organisationId, (tx) => attempt(tx, parcel, now));
  if (failure !== null) throw failure;
}

async function attempt<Row>(tx: EntityManager, parcel: Parcel<Row>, now: Date): Promise<TemporaryMailError | null> {
  const { table, id } = parcel;
  const [lock]: { taken: boolean }[] = await tx.query(
    `SELECT pg_try_advisory_xact_lock(hashtextextended($1, 0)) AS taken`,
    [`${table}/${id}`],
  );
  if (lock?.taken !== true) return null;
  const [row]: { messageId: string }[] = await tx.query(
    `SELECT message_id AS "messageId" FROM ${table} WHERE id = $1 AND state = 'scheduled' AND due_at <= $2`,
    [id, now],
  );
  const loaded = row === undefined ? null : await parcel.load(tx, id);
  if (row === undefined || loaded === null) return null;
  // A row renewed meanwhile has another message id: it keeps its own state.
  const settle = (state: string, lastError: string | null) =>
    tx.query(
      `UPDATE ${table} SET state = $3, last_error = $4, sent_at = CASE WHEN $3 = 'sent' THEN $5::timestamptz END
       WHERE id = $1 AND message_id = $2 AND state = 'scheduled'`,
      [id, row.messageId, state, lastError, now],
    );
  try {
    const { state } = await parcel.send(tx, loaded);
    await settle(state, null);
    return null;
  } catch (error) {
    if (error instanceof TemporaryMailError) {
      await settle('scheduled', error.code);
      return error;
    }
    if (!(error instanceof RefusedMailError)) throw error;
    await parcel.refused(tx, loaded);
    await settle('failed', error.code);
    return null;
  }
}
