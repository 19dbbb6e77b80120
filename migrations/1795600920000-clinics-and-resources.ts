import type { MigrationInterface, QueryRunner } from 'typeorm';
import { TENANT_KEY, keepApart } from './row-security.js';

/**
 * Clinics and what serves one at a time. `resource` is the super-table: a chair, person, kit, patient or bench place has
 * the id of its resource, so that one occupancy table can hold the time of all of them.
 */
export class ClinicsAndResources1795600920000 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      CREATE TABLE clinic (${TENANT_KEY},
        name text NOT NULL CHECK (name <> ''),
        zone text NOT NULL,
        address text NOT NULL,
        travel_minutes integer NOT NULL DEFAULT 0 CHECK (travel_minutes >= 0),
        version integer NOT NULL DEFAULT 1);
      ${keepApart('clinic')}

      CREATE TABLE resource (${TENANT_KEY},
        kind text NOT NULL CHECK (kind IN ('chair', 'clinician', 'assistant', 'kit', 'patient', 'place')),
        label text NOT NULL,
        retired_at timestamptz);
      ${keepApart('resource')}

      CREATE TABLE chair (${TENANT_KEY},
        clinic_id uuid NOT NULL,
        label text NOT NULL CHECK (label <> ''),
        wheelchair_room boolean NOT NULL DEFAULT false,
        FOREIGN KEY (organisation_id, id) REFERENCES resource,
        FOREIGN KEY (organisation_id, clinic_id) REFERENCES clinic,
        CONSTRAINT chair_label_once UNIQUE (organisation_id, clinic_id, label));
      ${keepApart('chair')}

      CREATE TABLE practitioner (${TENANT_KEY},
        role text NOT NULL CHECK (role IN ('clinician', 'assistant')),
        name text NOT NULL CHECK (name <> ''),
        skills text[] NOT NULL,
        FOREIGN KEY (organisation_id, id) REFERENCES resource);
      ${keepApart('practitioner')}

      CREATE TABLE practitioner_clinic (${TENANT_KEY},
        practitioner_id uuid NOT NULL,
        clinic_id uuid NOT NULL,
        FOREIGN KEY (organisation_id, practitioner_id) REFERENCES practitioner,
        FOREIGN KEY (organisation_id, clinic_id) REFERENCES clinic,
        CONSTRAINT practitioner_clinic_once UNIQUE (organisation_id, practitioner_id, clinic_id));
      ${keepApart('practitioner_clinic')}

      CREATE TABLE kit (${TENANT_KEY},
        clinic_id uuid NOT NULL,
        code text NOT NULL CHECK (code <> ''),
        reprocessing_minutes integer NOT NULL CHECK (reprocessing_minutes >= 0),
        FOREIGN KEY (organisation_id, id) REFERENCES resource,
        FOREIGN KEY (organisation_id, clinic_id) REFERENCES clinic);
      ${keepApart('kit')}`);
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query(`
      DROP TABLE kit; DROP TABLE practitioner_clinic; DROP TABLE practitioner; DROP TABLE chair; DROP TABLE resource;
      DROP TABLE clinic`);
  }
}
