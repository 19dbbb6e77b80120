import type { StageBoard } from '@archwright/contracts';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { CASE_IN_SCOPE, caseScope } from '../cases/case-access.js';

type Waiting = StageBoard['waiting'][number];

/** More than a person can decide in a day. */
const MOST = 50;

const WAITING = `
  SELECT w.kind, w.id, c.number AS "caseNumber", i.given_name || ' ' || i.family_name AS "patientName", w.reason,
    w.decide_by AS "decideBy", l.zone
  FROM (
    SELECT 'alert' AS kind, id, case_id, reason, decide_by, raised_at AS since FROM remake_alert
      WHERE state IN ('open', 'planned')
    UNION ALL
    SELECT 'late-finding', stage_id, case_id, reason, answer_by, created_at FROM finding_pause WHERE state = 'open'
  ) w
  JOIN treatment_case c ON c.id = w.case_id
  JOIN clinic l ON l.id = c.home_clinic_id
  LEFT JOIN patient_identity i ON i.patient_id = c.patient_id
  WHERE ${CASE_IN_SCOPE}
  ORDER BY w.decide_by NULLS LAST, w.since, w.id LIMIT $3`;

/** Alerts and late findings of the actor's clinics that nobody has decided, the most urgent first. */
export async function waitingDecisions(tx: EntityManager, actor: Actor): Promise<Waiting[]> {
  const rows: (Omit<Waiting, 'decideBy' | 'patientName'> & { decideBy: Date | null; patientName: string | null })[] =
    await tx.query(WAITING, [...caseScope(actor), MOST]);
  return rows.map(({ decideBy, patientName, ...row }) => ({
    ...row,
    patientName: patientName ?? '(erased)',
    decideBy: decideBy?.toISOString() ?? null,
  }));
}
