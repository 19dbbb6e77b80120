import { addDays, startOfDayMs } from '@archwright/calendar';
import type { AuditEntryView, AuditPage, AuditQuery } from '@archwright/contracts';
import { decodeCursor, pageOf } from '@archwright/platform';
import { Clinic } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { clinicScope } from '../patients/patient-access.js';
import { CASE_OF_PART, partsOfCase } from './case-of-part.js';
import { SUBJECT_NAME } from './subject-name.js';

type Row = Omit<AuditEntryView, 'at'> & { readonly at: Date; readonly sortKey: string };

/** Microseconds in the key: two entries of one transaction may share a millisecond. */
const SORT_KEY = `to_char(e.happened_at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.US')`;

function isInstantKey(key: string): boolean {
  const [, milliseconds] = /^(.{23})\d{3}$/.exec(key) ?? [];
  const at = new Date(`${milliseconds ?? ''}Z`);
  return !Number.isNaN(at.getTime()) && at.toISOString() === `${milliseconds ?? ''}Z`;
}

/**
 * Who did what and when, the latest first. A manager sees what belongs to cases of their clinics and what belongs to no
 * case; an administrator all of it.
 */
export async function findAuditEntries(tx: EntityManager, actor: Actor, query: AuditQuery): Promise<AuditPage> {
  const { actorId, action, caseNumber, cursor, limit } = query;
  const after = cursor === undefined ? null : decodeCursor(cursor, isInstantKey);
  const { from, until } = await boundsOf(tx, query);
  const rows: Row[] = await tx.query(
    `SELECT e.id, e.happened_at AS at, u.name AS by, e.action, e.subject_kind AS "subjectKind", e.subject_id AS "subjectId",
       ${SUBJECT_NAME} AS "subjectName", c.id AS "caseId", c.number AS "caseNumber", e.request_id AS "requestId",
       e.details, ${SORT_KEY} AS "sortKey"
     FROM audit_entry e LEFT JOIN user_account u ON u.id = e.actor_id
       LEFT JOIN LATERAL (${CASE_OF_PART} LIMIT 1) part ON true LEFT JOIN treatment_case c ON c.id = part.case_id
     WHERE ($1::uuid[] IS NULL OR c.id IS NULL OR c.clinic_ids && $1::uuid[])
       AND ($2::uuid IS NULL OR e.actor_id = $2) AND ($3::text IS NULL OR starts_with(e.action, $3))
       AND ($4::uuid[] IS NULL OR e.subject_id = ANY ($4))
       AND ($5::timestamptz IS NULL OR e.happened_at >= $5) AND ($6::timestamptz IS NULL OR e.happened_at < $6)
       AND ($7::text IS NULL OR (e.happened_at, e.id) < ($7::timestamp AT TIME ZONE 'UTC', $8::uuid))
     ORDER BY e.happened_at DESC, e.id DESC LIMIT $9`,
    [
      clinicScope(actor),
      actorId ?? null,
      action ?? null,
      caseNumber === undefined ? null : await partsOfCase(tx, caseNumber),
      from,
      until,
      after?.sortKey ?? null,
      after?.id ?? null,
      limit + 1,
    ],
  );
  const { items, next } = pageOf(rows, limit, ({ sortKey, id }) => ({ sortKey, id }));
  return { items: items.map(viewOf), next };
}

/** Dates are the practice's: those of its first clinic. */
async function boundsOf(
  tx: EntityManager,
  { fromOn, untilOn }: AuditQuery,
): Promise<{ from: Date | null; until: Date | null }> {
  if (fromOn === undefined && untilOn === undefined) return { from: null, until: null };
  const [clinic] = await tx.find(Clinic, { order: { id: 'ASC' }, take: 1 });
  const zone = clinic?.zone ?? 'UTC';
  return {
    from: fromOn === undefined ? null : new Date(startOfDayMs(fromOn, zone)),
    until: untilOn === undefined ? null : new Date(startOfDayMs(addDays(untilOn, 1), zone)),
  };
}

function viewOf(row: Row): AuditEntryView {
  const { id, by, action, subjectKind, subjectId, subjectName, caseId, caseNumber, requestId, details } = row;
  const subject = { subjectKind, subjectId, subjectName };
  return { id, at: row.at.toISOString(), by, action, ...subject, caseId, caseNumber, requestId, details };
}
