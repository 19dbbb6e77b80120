import { currentRequestId } from '@archwright/platform';
import type { EntityManager } from 'typeorm';
import { uuidv7 } from '../uuidv7.js';
import { CANONICAL, GENESIS, link } from './audit-chain.js';
import { AuditEntry } from './history.entity.js';

const SEALED_AT_ONCE = 1000;

export interface NewAuditEntry {
  /** Null when the background service acts. */
  readonly actorId: string | null;
  readonly action: string;
  readonly subjectKind: string;
  readonly subjectId: string | null;
  /** Ids and values, no identity: an entry outlives the erasure of a patient. */
  readonly details: Readonly<Record<string, unknown>>;
  readonly at: Date;
}

/** Writes who did what and in which request, in the transaction of the deed. Never changed afterwards; a seal follows. */
export async function recordAudit(tx: EntityManager, ...entries: readonly NewAuditEntry[]): Promise<void> {
  const requestId = currentRequestId();
  await tx.insert(
    AuditEntry,
    entries.map(({ at, ...entry }) => ({ ...entry, id: uuidv7(), requestId, happenedAt: at })),
  );
}

/**
 * Chains committed entries that have no seal yet, oldest first. One sealer per organisation at a time; writers of
 * entries never wait for it.
 *
 * @returns how many were sealed; call again while it is not 0
 */
export async function sealAudit(tx: EntityManager, now: Date): Promise<number> {
  await tx.query(
    `SELECT pg_advisory_xact_lock(hashtextextended('audit-seal/' || current_setting('app.organisation_id'), 0))`,
  );
  const [last]: { sequence: number; hash: string }[] = await tx.query(
    'SELECT sequence, hash FROM audit_seal ORDER BY sequence DESC LIMIT 1',
  );
  const entries: { id: string; canonical: string }[] = await tx.query(
    `SELECT e.id, ${CANONICAL} AS canonical
     FROM (SELECT e.* FROM audit_unsealed JOIN audit_entry e USING (organisation_id, id)
           ORDER BY e.happened_at, e.id LIMIT $1) e
     ORDER BY e.happened_at, e.id`,
    [SEALED_AT_ONCE],
  );
  const links: { sequence: number; entryId: string; previous: string; hash: string }[] = [];
  let previous = last?.hash ?? GENESIS;
  for (const [index, { id, canonical }] of entries.entries()) {
    const hash = link(previous, canonical);
    links.push({ sequence: (last?.sequence ?? 0) + 1 + index, entryId: id, previous, hash });
    previous = hash;
  }
  if (links.length === 0) return 0;
  await tx.query(
    `INSERT INTO audit_seal (id, sequence, entry_id, previous_hash, hash, sealed_at)
     SELECT *, $6::timestamptz FROM unnest($1::uuid[], $2::integer[], $3::uuid[], $4::text[], $5::text[])`,
    [
      links.map(() => uuidv7()),
      links.map(({ sequence }) => sequence),
      links.map(({ entryId }) => entryId),
      links.map((each) => each.previous),
      links.map(({ hash }) => hash),
      now,
    ],
  );
  await tx.query('DELETE FROM audit_unsealed WHERE id = ANY ($1)', [links.map(({ entryId }) => entryId)]);
  return links.length;
}
