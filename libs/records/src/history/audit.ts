import { createHash } from 'node:crypto';
import { currentRequestId } from '@archwright/platform';
import type { EntityManager } from 'typeorm';
import { uuidv7 } from '../uuidv7.js';
import { AuditEntry } from './history.entity.js';

/** Hash before the first entry. */
const GENESIS = '0'.repeat(64);
const SEALED_AT_ONCE = 1000;

/**
 * Entry as text that is the same on every machine: PostgreSQL's own text of instant and details, so that no digit that
 * the database keeps is out of the hash.
 */
const CANONICAL = `json_build_array(e.id, to_char(e.happened_at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.US'),
  e.actor_id, e.action, e.subject_kind, e.subject_id, e.request_id, e.details::text)::text`;

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

/** First link of the chain that does not hold, and what is wrong with it. */
export interface BrokenSeal {
  readonly sequence: number;
  readonly entryId: string;
  readonly problem: 'entry-changed' | 'chain-broken' | 'seal-missing';
}

export interface AuditVerification {
  readonly sealed: number;
  readonly unsealed: number;
  /** Last hash; kept elsewhere, it also shows that the end was cut off. */
  readonly head: string;
  readonly broken: BrokenSeal | null;
}

/** Writes who did what and in which request, in the transaction of the deed. Never changed afterwards; a seal follows. */
export async function recordAudit(tx: EntityManager, ...entries: readonly NewAuditEntry[]): Promise<void> {
  const requestId = currentRequestId();
  await tx.insert(
    AuditEntry,
    entries.map(({ at, ...entry }) => ({ ...entry, id: uuidv7(), requestId, happenedAt: at })),
  );
}
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
    `SELECT e.id, ${CANONICAL} AS canonical FROM audit_entry e
     WHERE NOT EXISTS (SELECT FROM audit_seal s WHERE s.entry_id = e.id)
     ORDER BY e.happened_at, e.id LIMIT $1`,
    [SEALED_AT_ONCE],
  );
  const links: { sequence: number; entryId: string; previous: string; hash: string }[] = [];
  let previous = last?.hash ?? GENESIS;
  for (const [index, { id, canonical }] of entries.entries()) {
    const hash = link(previous, canonical);
    links.push({ sequence: (last?.sequence ?? 0) + 1 + index, entryId: id, previous, hash });
    previous = hash;
  }
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
  return links.length;
}

/** Recomputes the whole chain of the organisation and names the first link that does not hold. */
export async function verifyAudit(tx: EntityManager): Promise<AuditVerification> {
  const seals: { sequence: number; entryId: string; previous: string; hash: string; canonical: string }[] =
    await tx.query(
      `SELECT s.sequence, s.entry_id AS "entryId", s.previous_hash AS previous, s.hash, ${CANONICAL} AS canonical
     FROM audit_seal s JOIN audit_entry e ON e.id = s.entry_id ORDER BY s.sequence`,
    );
  const [unsealed]: { count: number }[] = await tx.query(
    `SELECT count(*)::integer AS count FROM audit_entry e WHERE NOT EXISTS (SELECT FROM audit_seal s WHERE s.entry_id = e.id)`,
  );
  let head = GENESIS;
  let broken: BrokenSeal | null = null;
  for (const [index, seal] of seals.entries()) {
    const problem = problemOf(seal, index + 1, head);
    if (problem !== null) {
      broken = { sequence: seal.sequence, entryId: seal.entryId, problem };
      break;
    }
    head = seal.hash;
  }
  return { sealed: seals.length, unsealed: unsealed?.count ?? 0, head, broken };
}

function problemOf(
  seal: { sequence: number; previous: string; hash: string; canonical: string },
  expectedSequence: number,
  head: string,
): BrokenSeal['problem'] | null {
  if (seal.sequence !== expectedSequence) return 'seal-missing';
  if (seal.previous !== head) return 'chain-broken';
  return link(head, seal.canonical) === seal.hash ? null : 'entry-changed';
}

function link(previous: string, canonical: string): string {
  return createHash('sha256').update(`${previous}\n${canonical}`).digest('hex');
}
