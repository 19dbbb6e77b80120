import type { MigrationInterface, QueryRunner } from 'typeorm';
import { TENANT_KEY, keepApart } from './row-security.js';

/**
 * What to mind with a patient: allergies to materials, trouble swallowing, medicines that concern treatment. One that no
 * longer holds is ended, not deleted: it was in force when something was done.
 */
export class PatientCautions1795601965000 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      CREATE TABLE patient_caution (${TENANT_KEY},
        patient_id uuid NOT NULL,
        kind text NOT NULL CHECK (kind IN ('material-allergy', 'swallowing', 'bleeding', 'jaw-bone', 'other')),
        material text CHECK (material ~ '^[a-z]+(-[a-z]+)*$'),
        note text,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        recorded_by uuid NOT NULL,
        ended_at timestamptz,
        ended_by uuid,
        end_reason text,
        version integer NOT NULL DEFAULT 1,
        FOREIGN KEY (organisation_id, patient_id) REFERENCES patient,
        FOREIGN KEY (organisation_id, recorded_by) REFERENCES user_account,
        FOREIGN KEY (organisation_id, ended_by) REFERENCES user_account,
        CONSTRAINT patient_caution_allergy_names_material CHECK ((kind = 'material-allergy') = (material IS NOT NULL)),
        CONSTRAINT patient_caution_other_has_note CHECK (kind <> 'other' OR note IS NOT NULL),
        CONSTRAINT patient_caution_ended_has_reason CHECK (num_nonnulls(ended_at, ended_by, end_reason) IN (0, 3)));
      CREATE UNIQUE INDEX patient_caution_one_live_per_material ON patient_caution (organisation_id, patient_id, material)
        WHERE ended_at IS NULL AND material IS NOT NULL AND material <> 'another';
      CREATE INDEX patient_caution_by_patient ON patient_caution (organisation_id, patient_id);
      ${keepApart('patient_caution')}`);
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query('DROP TABLE patient_caution');
  }
}
