import type { EntityManager } from 'typeorm';

/** More than this is not told one by one: whoever listens looks at everything again. */
const TOLD_AT_ONCE = 500;

/** That something changed, and what it was; never how. */
export interface Change {
  readonly kind: string;
  readonly id: string | null;
  /** Null when the background service acted. */
  readonly actorId: string | null;
}

export interface ChangesSince {
  /** Where to go on: everything before it has been told. */
  readonly position: bigint;
  /** Null when there is too much to tell, or when the position to go on from is of another database. */
  readonly changes: readonly Change[] | null;
}

/**
 * What was committed since a position, from the history of cases and the audit trail: complete, whatever committed in
 * which order. A transaction that is still open holds later ones back until it ends, those of other organisations too.
 *
 * @param tx reads one snapshot (`readInOrganisation`), so that several calls end at the same position
 * @param since the position of an earlier answer; null for the present one
 */
export async function changesSince(tx: EntityManager, since: bigint | null): Promise<ChangesSince> {
  const [now]: { horizon: string }[] = await tx.query(
    'SELECT pg_snapshot_xmin(pg_current_snapshot())::text AS horizon',
  );
  const position = BigInt(now?.horizon ?? 0);
  if (since === null || since === position) return { position, changes: [] };
  // Transactions are counted from the start again where a backup was restored into a new server.
  if (since > position) return { position, changes: null };
  const changes: Change[] = await tx.query(
    `SELECT 'case' AS kind, case_id AS id, actor_id AS "actorId" FROM case_event
       WHERE written_in >= $1 AND written_in < $2
     UNION
     SELECT subject_kind, subject_id, actor_id FROM audit_entry WHERE written_in >= $1 AND written_in < $2
     LIMIT $3`,
    [String(since), String(position), TOLD_AT_ONCE + 1],
  );
  return { position, changes: changes.length > TOLD_AT_ONCE ? null : changes };
}
