import type { EntityManager } from 'typeorm';
import type { Loss } from './loss.js';

/** A case that a loss falls on, with the visits and laboratory work that it falls on. */
export interface AffectedCase {
  readonly caseId: string;
  readonly appointmentIds: readonly string[];
  readonly labStepIds: readonly string[];
  /** When it first falls on the case. */
  readonly firstAt: Date;
}

interface Hit {
  readonly caseId: string;
  readonly appointmentId: string | null;
  readonly labStepId: string | null;
  readonly at: Date;
}

/** Visits to come that are booked or agreed on for the time being, `a`, at `$1` or later. */
const VISITS = `SELECT s.case_id AS "caseId", a.id AS "appointmentId", NULL::uuid AS "labStepId", a.starts_at AS at
  FROM appointment a JOIN appointment_stage x ON x.appointment_id = a.id JOIN stage s ON s.id = x.stage_id
  JOIN treatment_case c ON c.id = s.case_id AND c.state IN ('open', 'enquiry')
  WHERE a.state IN ('booked', 'provisional') AND a.starts_at > $1`;
/** Work to come, `l`. */
const WORK = `SELECT l.case_id, NULL::uuid, l.id, l.starts_at
  FROM lab_step l JOIN treatment_case c ON c.id = l.case_id AND c.state IN ('open', 'enquiry')
  WHERE l.state IN ('planned', 'ready')`;
/** Lost time is from `$2` to `$3`. */
const SAME_TIME = (of: string): string => `${of}.starts_at < $3 AND ${of}.ends_at > $2`;

/** Of the resource `$4`, kits being reprocessed and clinicians on their way included. */
const OF_RESOURCE = `${VISITS} AND EXISTS (SELECT FROM occupancy o
    WHERE o.appointment_id = a.id AND o.resource_id = $4 AND ${SAME_TIME('o')})
  UNION ${WORK} AND EXISTS (SELECT FROM occupancy o
    WHERE (o.lab_step_id = l.id OR o.batch_id = l.batch_id) AND o.resource_id = $4 AND ${SAME_TIME('o')})`;

const HITS: Readonly<Record<Exclude<Loss['what'], 'nothing'>, string>> = {
  resource: OF_RESOURCE,
  clinic: `${VISITS} AND a.clinic_id = $4 AND ${SAME_TIME('a')}`,
  'work-centre': `${WORK} AND $1::timestamptz IS NOT NULL AND l.work_centre_id = $4 AND ${SAME_TIME('l')}`,
  laboratory: `${WORK} AND $1::timestamptz IS NOT NULL AND l.laboratory_id = $4 AND ${SAME_TIME('l')}`,
  courier: `SELECT g.case_id, NULL::uuid, NULL::uuid, g.departs_at FROM courier_leg g
    JOIN treatment_case c ON c.id = g.case_id AND c.state IN ('open', 'enquiry')
    WHERE $1::timestamptz IS NOT NULL AND g.courier_id = $4 AND g.state = 'planned'
      AND g.departs_at >= $2 AND g.departs_at < $3`,
  visit: `SELECT s.case_id, a.id, NULL::uuid, a.starts_at
    FROM appointment a JOIN appointment_stage x ON x.appointment_id = a.id JOIN stage s ON s.id = x.stage_id
    WHERE a.id = $4 AND $1::timestamptz IS NOT NULL AND $2::timestamptz < $3::timestamptz`,
  'lab-step': OF_RESOURCE,
};

/**
 * Open cases that a loss falls on, the one that it reaches first leading. Whether a case's plan is broken by it is for the
 * search to say: work may have the slack to wait.
 */
export async function findAffected(tx: EntityManager, loss: Loss, now: Date): Promise<AffectedCase[]> {
  if (loss.what === 'nothing') return [];
  const subject = loss.what === 'lab-step' ? loss.step.placeId : loss.id;
  const sql = `SELECT * FROM (${HITS[loss.what]}) AS hit ("caseId", "appointmentId", "labStepId", at) ORDER BY at, "caseId"`;
  const window = [now, new Date(loss.startMs), new Date(loss.endMs)];
  const hits: Hit[] = subject === null ? [] : await tx.query(sql, [...window, subject]);
  if (loss.what === 'lab-step') hits.unshift({ caseId: loss.caseId, appointmentId: null, labStepId: loss.id, at: now });
  return [...new Set(hits.map(({ caseId }) => caseId))].map((caseId) => {
    const own = hits.filter((hit) => hit.caseId === caseId);
    return {
      caseId,
      appointmentIds: [...new Set(own.flatMap(({ appointmentId }) => appointmentId ?? []))],
      labStepIds: [...new Set(own.flatMap(({ labStepId }) => labStepId ?? []))],
      firstAt: own[0]?.at ?? now,
    };
  });
}
