import type { RecallPage, RecallQuery, RecallView } from '@archwright/contracts';
import { decodeCursor, pageOf } from '@archwright/platform';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { CASE_IN_SCOPE, caseScope } from '../cases/case-access.js';
import { stageTitles } from '../booking/stage-titles.js';

interface RecallRow extends Omit<RecallView, 'title' | 'startsAt'> {
  readonly startsAt: Date | null;
}

const SELECTED = `
  SELECT r.id, r.version, r.case_id AS "caseId", c.number AS "caseNumber", c.patient_id AS "patientId",
    coalesce(i.given_name || ' ' || i.family_name, '') AS "patientName", i.phone, r.kind AS stage,
    r.due_on::text AS "dueOn", r.state, r.reason, r.appointment_id AS "appointmentId", a.starts_at AS "startsAt"
  FROM recall r
  JOIN treatment_case c ON c.id = r.case_id
  LEFT JOIN patient_identity i ON i.patient_id = c.patient_id
  LEFT JOIN appointment a ON a.id = r.appointment_id`;

/** The longest due first; without another wish those that are due and not booked. Whoever takes a case over calls it in. */
export async function listRecalls(tx: EntityManager, actor: Actor, query: RecallQuery): Promise<RecallPage> {
  const { state, until, clinicId, cursor, limit } = query;
  const after = cursor === undefined ? null : decodeCursor(cursor);
  const rows: RecallRow[] = await tx.query(
    `${SELECTED} WHERE ${CASE_IN_SCOPE} AND r.state = $3 AND c.state <> 'transferred' AND ($4::date IS NULL OR r.due_on <= $4)
       AND ($5::uuid IS NULL OR $5 = ANY (c.clinic_ids))
       AND ($6::text IS NULL OR (r.due_on::text COLLATE "C", r.id) > ($6 COLLATE "C", $7::uuid))
     ORDER BY r.due_on, r.id LIMIT $8`,
    [...caseScope(actor), state, until ?? null, clinicId ?? null, after?.sortKey ?? null, after?.id ?? null, limit + 1],
  );
  const { items, next } = pageOf(rows, limit, ({ dueOn, id }) => ({ sortKey: dueOn, id }));
  return { items: await toViews(tx, items), next };
}

/** Checks of one case in the order of their dates. */
export async function recallsOfCase(tx: EntityManager, caseId: string): Promise<RecallView[]> {
  const rows: RecallRow[] = await tx.query(`${SELECTED} WHERE r.case_id = $1 ORDER BY r.due_on, r.id`, [caseId]);
  return toViews(tx, rows);
}

async function toViews(tx: EntityManager, rows: readonly RecallRow[]): Promise<RecallView[]> {
  const titles = await stageTitles(tx, [...new Set(rows.map(({ caseId }) => caseId))]);
  return rows.map((row) => ({
    ...row,
    title: titles.get(row.caseId)?.get(row.stage) ?? row.stage,
    startsAt: row.startsAt?.toISOString() ?? null,
  }));
}
