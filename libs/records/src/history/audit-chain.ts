import { createHash } from 'node:crypto';

/** Hash before the first entry. */
export const GENESIS = '0'.repeat(64);

/**
 * Entry as text that is the same on every machine: PostgreSQL's own text of instant and details, so that no digit that
 * the database keeps is out of the hash.
 */
export const CANONICAL = `json_build_array(e.id, to_char(e.happened_at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.US'),
  e.actor_id, e.action, e.subject_kind, e.subject_id, e.request_id, e.details::text)::text`;

/** Hash of an entry, over the one of the entry before it. */
export function link(previous: string, canonical: string): string {
  return createHash('sha256').update(`${previous}\n${canonical}`).digest('hex');
}
