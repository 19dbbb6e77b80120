import type { MigrationInterface, QueryRunner } from 'typeorm';
import { TENANT_KEY, keepApart } from './row-security.js';

/**
 * Patients. Identity lives in its own table: erasing it leaves history and its hashes valid. `search_key` is compared
 * by `>=` and `<` in byte order, since LIKE can't be an index condition under row-level security.
 */
export class Patients1795601160000 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      CREATE TABLE patient (${TENANT_KEY},
        zone text NOT NULL,
        locale text NOT NULL,
        accepted_clinic_ids uuid[] NOT NULL,
        wishes jsonb NOT NULL,
        chair_minutes_per_day integer CHECK (chair_minutes_per_day > 0),
        companion_permitted boolean NOT NULL DEFAULT false,
        interpreter text,
        wheelchair_room boolean NOT NULL DEFAULT false,
        travel_minutes integer NOT NULL DEFAULT 0 CHECK (travel_minutes >= 0),
        died_on date,
        version integer NOT NULL DEFAULT 1,
        created_at timestamptz NOT NULL DEFAULT now(),
        FOREIGN KEY (organisation_id, id) REFERENCES resource);
      ${keepApart('patient')}

      CREATE TABLE patient_identity (${TENANT_KEY},
        patient_id uuid NOT NULL,
        given_name text NOT NULL CHECK (given_name <> ''),
        family_name text NOT NULL CHECK (family_name <> ''),
        birth_on date NOT NULL,
        mail text,
        phone text,
        address text,
        companion_name text,
        companion_phone text,
        import_key text,
        search_key text COLLATE "C" NOT NULL,
        FOREIGN KEY (organisation_id, patient_id) REFERENCES patient,
        CONSTRAINT patient_identity_one_per_patient UNIQUE (organisation_id, patient_id),
        CONSTRAINT patient_identity_import_key_once UNIQUE (organisation_id, import_key));
      CREATE INDEX patient_identity_by_search_key ON patient_identity (organisation_id, search_key);
      ${keepApart('patient_identity')}

      CREATE TABLE consent (${TENANT_KEY},
        patient_id uuid NOT NULL,
        channel text NOT NULL CHECK (channel IN ('mail', 'phone')),
        given_at timestamptz NOT NULL,
        withdrawn_at timestamptz CHECK (withdrawn_at >= given_at),
        wording_version text NOT NULL,
        recorded_by uuid,
        FOREIGN KEY (organisation_id, patient_id) REFERENCES patient,
        FOREIGN KEY (organisation_id, recorded_by) REFERENCES user_account);
      CREATE UNIQUE INDEX consent_one_live_per_channel ON consent (organisation_id, patient_id, channel)
        WHERE withdrawn_at IS NULL;
      ${keepApart('consent')}`);
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query('DROP TABLE consent; DROP TABLE patient_identity; DROP TABLE patient');
  }
}
