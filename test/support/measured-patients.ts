import { subjectKey } from '@archwright/casework';
import { measurementByCode } from '@archwright/measures';
import type { EntityManager } from 'typeorm';

/** Patients with one measured visit each, in the order of their values. */
export interface Measured {
  readonly clinicId: string;
  readonly recordedBy: string;
  readonly code: string;
  readonly unit: string;
  readonly method: Readonly<Record<string, string>> | null;
  readonly values: readonly number[];
  /** When the first was recorded; each later one an hour after the one before. */
  readonly from: Date;
  /** Numbers of the cases begin here. */
  readonly firstNumber: number;
  /** What they were taken with; left out where nobody said. */
  readonly deviceId?: string;
}

/** Writes rows as they are after a checked and screened capture; nobody has a name. */
export async function writeMeasured(tx: EntityManager, measured: Measured): Promise<void> {
  const { clinicId, recordedBy, code, unit, method, values, from, firstNumber, deviceId = null } = measured;
  const subject = subjectKey({
    code,
    arch: null,
    side: null,
    region: null,
    method: method === null ? null : { ...method },
  });
  await tx.query(
    `CREATE TEMPORARY TABLE given ON COMMIT DROP AS
     SELECT gen_random_uuid() AS patient, gen_random_uuid() AS case, gen_random_uuid() AS stage,
       gen_random_uuid() AS capture, v.value, $2::timestamptz + v.place * interval '1 hour' AS at,
       ($3::integer + v.place)::text AS number
     FROM unnest($1::double precision[]) WITH ORDINALITY AS v (value, place)`,
    [values, from, firstNumber],
  );
  await tx.query(`INSERT INTO resource (id, kind, label) SELECT patient, 'patient', number FROM given`);
  await tx.query(
    `INSERT INTO patient (id, zone, locale, accepted_clinic_ids, wishes)
     SELECT patient, 'Europe/London', 'en', ARRAY[$1::uuid], '{}' FROM given`,
    [clinicId],
  );
  await tx.query(
    `INSERT INTO treatment_case (id, number, patient_id, state, home_clinic_id, clinic_ids, wishes)
     SELECT g.case, '90-' || lpad(g.number, 6, '0'), patient, 'closed', $1::uuid, ARRAY[$1::uuid], '{}' FROM given g`,
    [clinicId],
  );
  await tx.query(
    `INSERT INTO stage (id, case_id, code, position, arches, state)
     SELECT g.stage, g.case, 'V3', 2, '{upper,lower}', 'passed' FROM given g`,
  );
  await tx.query(
    `INSERT INTO capture (id, stage_id, clinic_id, other_centric_relation, recorded_at, recorded_by, checked_at, screened_at)
     SELECT capture, stage, $1, '[]', at, $2, at, at FROM given`,
    [clinicId, recordedBy],
  );
  // What is worked out is in no reading.
  if (measurementByCode(code).derived !== true)
    await tx.query(
      `INSERT INTO measurement (id, capture_id, stage_id, code, value_number, unit, method, recorded_at, recorded_by)
     SELECT gen_random_uuid(), capture, stage, $1, value, $2, $3, at, $4 FROM given`,
      [code, unit, method === null ? null : JSON.stringify(method), recordedBy],
    );
  await tx.query(
    `INSERT INTO stage_value (id, capture_id, stage_id, patient_id, clinic_id, recorded_by, recorded_at, subject, code,
       method, device_id, value)
     SELECT gen_random_uuid(), capture, stage, patient, $1, $2, at, $3, $4, $5, $6, value FROM given`,
    [clinicId, recordedBy, subject, code, method === null ? null : JSON.stringify(method), deviceId],
  );
  await tx.query('DROP TABLE given');
}

/** The same patients measured in several ways at one visit each. */
export async function writeTogether(
  tx: EntityManager,
  of: Pick<Measured, 'clinicId' | 'recordedBy' | 'from' | 'firstNumber'>,
  series: Readonly<Record<string, readonly number[]>>,
): Promise<void> {
  const [[code, values] = ['', []], ...others] = Object.entries(series);
  await writeMeasured(tx, { ...of, code, unit: 'mm', method: null, values });
  for (const [other, more] of others) {
    await tx.query(
      `INSERT INTO stage_value (id, capture_id, stage_id, patient_id, clinic_id, recorded_by, recorded_at, subject, code, value)
       SELECT gen_random_uuid(), v.capture_id, v.stage_id, v.patient_id, v.clinic_id, v.recorded_by, v.recorded_at, $1, $1, m.value
       FROM (SELECT *, row_number() OVER (ORDER BY recorded_at) AS place FROM stage_value
         WHERE code = $2 AND recorded_at > $3 AND recorded_at <= $3 + $4::integer * interval '1 hour') v
         JOIN unnest($5::double precision[]) WITH ORDINALITY AS m (value, place) USING (place)`,
      [other, code, of.from, values.length, more],
    );
  }
}
