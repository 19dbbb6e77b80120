import { localDate } from '@archwright/calendar';
import type { EntityManager } from 'typeorm';

/** A case whose dentures were placed, beside what was first confirmed to the patient. */
export interface DeliveredCase {
  readonly caseId: string;
  readonly caseNumber: string;
  readonly openedOn: string;
  readonly promisedOn: string;
  readonly deliveredOn: string;
  /** Visits that took place up to the placement. */
  readonly visits: number;
  /** Whether something was made again before it. */
  readonly isRemade: boolean;
}

/**
 * Cases placed since an instant, in that order. The promise is the delivery date of the first plan that was confirmed:
 * what a patient was told first is what they remember.
 */
export async function deliveredCases(
  tx: EntityManager,
  clinicIds: readonly string[] | null,
  since: Date,
): Promise<DeliveredCase[]> {
  const rows: (Pick<DeliveredCase, 'caseId' | 'caseNumber' | 'promisedOn' | 'visits' | 'isRemade'> & {
    openedAt: Date;
    deliveredAt: Date;
    zone: string;
  })[] = await tx.query(
    `WITH promised AS (
       SELECT DISTINCT ON (h.case_id) h.case_id, p.document->'plan' AS plan FROM hold h JOIN plan p ON p.id = h.plan_id
       WHERE h.state = 'confirmed' AND p.document->'plan'->>'deliveryOn' IS NOT NULL ORDER BY h.case_id, h.created_at)
     SELECT c.id AS "caseId", c.number AS "caseNumber", c.opened_at AS "openedAt", k.zone,
       promised.plan->>'deliveryOn' AS "promisedOn", placed.at AS "deliveredAt",
       (SELECT count(DISTINCT a.id) FROM appointment a JOIN appointment_stage s ON s.appointment_id = a.id
         JOIN stage g ON g.id = s.stage_id
         WHERE g.case_id = c.id AND a.state = 'completed' AND a.starts_at <= placed.at)::integer AS visits,
       EXISTS (SELECT FROM remake_alert r WHERE r.case_id = c.id AND r.state = 'accepted' AND r.raised_at <= placed.at)
         AS "isRemade"
     FROM promised JOIN treatment_case c ON c.id = promised.case_id JOIN clinic k ON k.id = c.home_clinic_id
       CROSS JOIN LATERAL (SELECT max(g.completed_at) AS at FROM stage g
         WHERE g.case_id = c.id AND g.state = 'passed' AND g.code IN (
           SELECT v->>'stage' FROM jsonb_array_elements(promised.plan->'visits') v WHERE (v->>'isDelivery')::boolean)) placed
     WHERE placed.at >= $1 AND ($2::uuid[] IS NULL OR c.clinic_ids && $2::uuid[])
     ORDER BY placed.at, c.id`,
    [since, clinicIds],
  );
  return rows.map(({ openedAt, deliveredAt, zone, ...row }) => ({
    ...row,
    openedOn: localDate(openedAt.getTime(), zone),
    deliveredOn: localDate(deliveredAt.getTime(), zone),
  }));
}
