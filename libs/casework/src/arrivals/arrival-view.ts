import type { ArrivalCheckPage, ArrivalCheckQuery, ArrivalCheckView } from '@archwright/contracts';
import { decodeCursor, pageOf } from '@archwright/platform';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { CASE_IN_SCOPE, caseScope } from '../cases/case-access.js';
import { RecordNotFoundError } from '../errors.js';

type Row = Omit<ArrivalCheckView, 'visitAt' | 'raisedAt' | 'patientName'> & {
  readonly patientName: string | null;
  readonly visitAt: Date;
  readonly raisedAt: Date | null;
};

const CHECKS = `
  SELECT k.id, k.version, k.state, k.case_id AS "caseId", c.number AS "caseNumber",
    i.given_name || ' ' || i.family_name AS "patientName", k.appointment_id AS "appointmentId", l.name AS "clinicName",
    a.starts_at AS "visitAt", l.zone, g.code AS stage, k.missing, k.reason, k.raised_at AS "raisedAt", k.decision,
    k.decision_note AS "decisionNote"
  FROM arrival_check k JOIN treatment_case c ON c.id = k.case_id JOIN stage g ON g.id = k.stage_id
    JOIN appointment a ON a.id = k.appointment_id JOIN clinic l ON l.id = a.clinic_id
    LEFT JOIN patient_identity i ON i.patient_id = c.patient_id
  WHERE ${CASE_IN_SCOPE}`;

/** @throws {RecordNotFoundError} for one of a case that is unknown here or out of the actor's sight */
export async function viewArrivalCheck(tx: EntityManager, actor: Actor, checkId: string): Promise<ArrivalCheckView> {
  const [row]: Row[] = await tx.query(`${CHECKS} AND k.id = $3`, [...caseScope(actor), checkId]);
  if (row === undefined) throw new RecordNotFoundError('arrival check', checkId);
  return viewOf(row, actor);
}

/** The latest made first; the open ones are those that wait for a person. */
export async function listArrivalChecks(
  tx: EntityManager,
  actor: Actor,
  { state, caseId, cursor, limit }: ArrivalCheckQuery,
): Promise<ArrivalCheckPage> {
  const rows: Row[] = await tx.query(
    `${CHECKS} AND ($3::text IS NULL OR k.state = $3) AND ($4::uuid IS NULL OR k.case_id = $4)
       AND ($5::uuid IS NULL OR k.id < $5) ORDER BY k.id DESC LIMIT $6`,
    [
      ...caseScope(actor),
      state ?? null,
      caseId ?? null,
      cursor === undefined ? null : decodeCursor(cursor).id,
      limit + 1,
    ],
  );
  const { items, next } = pageOf(rows, limit, ({ id }) => ({ sortKey: '', id }));
  return { items: items.map((row) => viewOf(row, actor)), next };
}

/** A laboratory sees the work and its date, nobody's name, and nothing that a person typed. */
function viewOf(row: Row, { role }: Actor): ArrivalCheckView {
  const isLaboratory = role === 'lab';
  return {
    ...row,
    patientName: isLaboratory ? '' : (row.patientName ?? '(erased)'),
    decisionNote: isLaboratory ? null : row.decisionNote,
    visitAt: row.visitAt.toISOString(),
    raisedAt: row.raisedAt?.toISOString() ?? null,
  };
}
