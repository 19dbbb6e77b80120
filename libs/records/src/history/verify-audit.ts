import type { EntityManager } from 'typeorm';
import { CANONICAL, GENESIS, link } from './audit-chain.js';

/** A trail may be longer than what fits into memory. */
const READ_AT_ONCE = 5_000;

/** First link of the chain that does not hold, and what is wrong with it. */
export interface BrokenSeal {
  readonly sequence: number;
  readonly entryId: string;
  readonly problem: 'entry-changed' | 'chain-broken' | 'seal-missing';
}

export interface AuditVerification {
  readonly sealed: number;
  readonly unsealed: number;
  /** Neither sealed nor waiting for a seal: somebody took their note away. */
  readonly lost: number;
  /** Last hash; kept elsewhere, it also shows that the end was cut off. */
  readonly head: string;
  readonly broken: BrokenSeal | null;
}

interface Seal {
  readonly sequence: number;
  readonly entryId: string;
  readonly previous: string;
  readonly hash: string;
  readonly canonical: string;
}

/** Recomputes the whole chain of the organisation and names the first link that does not hold. */
export async function verifyAudit(tx: EntityManager): Promise<AuditVerification> {
  let head = GENESIS;
  let holding = 0;
  let broken: BrokenSeal | null = null;
  for (let seals = await sealsAfter(tx, 0); seals.length > 0 && broken === null;) {
    for (const seal of seals) {
      broken = problemOf(seal, holding + 1, head);
      if (broken !== null) break;
      head = seal.hash;
      holding++;
    }
    seals = await sealsAfter(tx, seals.at(-1)?.sequence ?? 0);
  }
  const [counted]: { sealed: number; unsealed: number; waiting: number }[] = await tx.query(
    `SELECT (SELECT count(*) FROM audit_seal)::integer AS sealed, count(e.id)::integer AS unsealed,
       count(u.id)::integer AS waiting
     FROM audit_entry e LEFT JOIN audit_unsealed u USING (organisation_id, id)
     WHERE NOT EXISTS (SELECT FROM audit_seal s WHERE s.organisation_id = e.organisation_id AND s.entry_id = e.id)`,
  );
  const { sealed, unsealed, waiting } = counted ?? { sealed: 0, unsealed: 0, waiting: 0 };
  return { sealed, unsealed, lost: unsealed - waiting, head, broken };
}

function sealsAfter(tx: EntityManager, sequence: number): Promise<Seal[]> {
  return tx.query(
    `SELECT s.sequence, s.entry_id AS "entryId", s.previous_hash AS previous, s.hash, ${CANONICAL} AS canonical
     FROM (SELECT * FROM audit_seal WHERE sequence > $1 ORDER BY sequence LIMIT $2) s
       JOIN audit_entry e ON e.organisation_id = s.organisation_id AND e.id = s.entry_id
     ORDER BY s.sequence`,
    [sequence, READ_AT_ONCE],
  );
}

function problemOf(seal: Seal, expectedSequence: number, head: string): BrokenSeal | null {
  const { sequence, entryId } = seal;
  if (sequence !== expectedSequence) return { sequence, entryId, problem: 'seal-missing' };
  if (seal.previous !== head) return { sequence, entryId, problem: 'chain-broken' };
  return link(head, seal.canonical) === seal.hash ? null : { sequence, entryId, problem: 'entry-changed' };
}
