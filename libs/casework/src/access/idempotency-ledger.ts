import { IdempotencyKey, uuidv7 } from '@archwright/records';
import {
  IdempotentRequestRunningError,
  type IdempotencyLedger,
  type IdempotentRequest,
  type LedgerEntry,
} from '@archwright/platform';
import { LessThan, type EntityManager } from 'typeorm';
import { NotYoursError } from '../errors.js';
import type { Actor } from '../actor.js';

/** A client that repeats a call later than this means it anew. Project default, no source: drafts leave the time open. */
const KEPT_MS = 24 * 3_600_000;

/**
 * Answers kept for the repeats of one person's calls. Made for one call, inside its transaction:
 *
 *     inOrganisation(db, actor.organisationId, (tx) =>
 *       answerOnce(new IdempotencyKeys(actor, 'open-case', now), tx, request, () => openCase(tx, actor, body, now)))
 *
 * The answer must be plain JSON, as a contract's view is: a repeat reads it back from the database.
 */
export class IdempotencyKeys implements IdempotencyLedger<EntityManager> {
  private readonly actorId: string;

  /** @param operation what the call does, such as `open-case`; a key counts for one operation of one person */
  constructor(
    actor: Actor,
    private readonly operation: string,
    private readonly now: Date,
  ) {
    if (actor.userId === null) throw new NotYoursError('Only a signed-in person repeats a call; this one has nobody.');
    this.actorId = actor.userId;
  }

  async claim(tx: EntityManager, key: string): Promise<LedgerEntry | null> {
    const [lock]: { isMine: boolean }[] = await tx.query(
      `SELECT pg_try_advisory_xact_lock(hashtextextended($1, 0)) AS "isMine"`,
      [JSON.stringify(['idempotency-key', this.actorId, this.operation, key])],
    );
    if (lock?.isMine !== true) throw new IdempotentRequestRunningError();
    const kept = await tx.findOneBy(IdempotencyKey, { actorId: this.actorId, route: this.operation, key });
    return kept === null ? null : { fingerprint: kept.bodyHash, answer: kept.response };
  }

  async keep(tx: EntityManager, { key, fingerprint }: IdempotentRequest, answer: unknown): Promise<void> {
    await tx.query(
      `INSERT INTO idempotency_key (id, actor_id, route, key, body_hash, response, created_at)
       VALUES ($1, $2, $3, $4, $5, $6, $7)`,
      [uuidv7(), this.actorId, this.operation, key, fingerprint, JSON.stringify(answer ?? null), this.now],
    );
  }
}

/** @returns how many kept answers were too old to be asked for again */
export async function forgetIdempotencyKeys(tx: EntityManager, now: Date): Promise<number> {
  const { affected } = await tx.delete(IdempotencyKey, { createdAt: LessThan(new Date(now.getTime() - KEPT_MS)) });
  return affected ?? 0;
}
