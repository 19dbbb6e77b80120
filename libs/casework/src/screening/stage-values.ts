import type { StageValue as StageValueRow } from '@archwright/records';
import type { EntityManager } from 'typeorm';

/** The value of one subject at one stage: that of the last capture that has any. */
export type StageValue = Pick<
  StageValueRow,
  'captureId' | 'stageId' | 'patientId' | 'clinicId' | 'deviceId' | 'recordedBy' | 'recordedAt' | 'value'
>;

/**
 * Every value of a subject in the organisation, one per stage, oldest first.
 *
 * @param subject its key
 * @param until left out what was recorded later, so that a repeated run compares with the same
 */
export async function loadStageValues(tx: EntityManager, subject: string, until: Date): Promise<StageValue[]> {
  return tx.query(
    `WITH at_stage AS (
       SELECT DISTINCT ON (stage_id) capture_id AS "captureId", stage_id AS "stageId", patient_id AS "patientId",
         clinic_id AS "clinicId", device_id AS "deviceId", recorded_by AS "recordedBy", recorded_at AS "recordedAt", value
       FROM stage_value WHERE subject = $1 AND recorded_at <= $2
       ORDER BY stage_id, recorded_at DESC, capture_id DESC)
     SELECT * FROM at_stage ORDER BY "recordedAt", "captureId"`,
    [subject, until],
  );
}
