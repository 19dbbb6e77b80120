import type { EntityManager } from 'typeorm';
import type { Subject } from './subject.js';

/** The value of one subject at one stage: the median of the readings of the last capture that has any. */
export interface StageValue {
  readonly captureId: string;
  readonly stageId: string;
  readonly patientId: string;
  readonly clinicId: string | null;
  readonly recordedBy: string;
  readonly recordedAt: Date;
  readonly value: number;
}

/**
 * Every value of a subject in the organisation, one per stage, oldest first.
 *
 * @param until left out what was recorded later, so that a repeated run compares with the same
 */
export async function loadStageValues(
  tx: EntityManager,
  { code, arch, side, region, method }: Subject,
  until: Date,
): Promise<StageValue[]> {
  return tx.query(
    `WITH reading AS (
       SELECT capture_id, percentile_cont(0.5) WITHIN GROUP (ORDER BY value_number) AS value FROM measurement
       WHERE code = $1 AND value_number IS NOT NULL AND arch IS NOT DISTINCT FROM $2 AND side IS NOT DISTINCT FROM $3
         AND region IS NOT DISTINCT FROM $4 AND method IS NOT DISTINCT FROM $5::jsonb AND recorded_at <= $6
       GROUP BY capture_id),
     at_stage AS (
       SELECT DISTINCT ON (k.stage_id) k.id AS "captureId", k.stage_id AS "stageId", c.patient_id AS "patientId",
         k.clinic_id AS "clinicId", k.recorded_by AS "recordedBy", k.recorded_at AS "recordedAt", r.value
       FROM reading r JOIN capture k ON k.id = r.capture_id JOIN stage g ON g.id = k.stage_id
         JOIN treatment_case c ON c.id = g.case_id
       ORDER BY k.stage_id, k.recorded_at DESC, k.id DESC)
     SELECT * FROM at_stage ORDER BY "recordedAt", "captureId"`,
    [code, arch, side, region, method === null ? null : JSON.stringify(method), until],
  );
}
