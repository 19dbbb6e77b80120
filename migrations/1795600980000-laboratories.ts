import type { MigrationInterface, QueryRunner } from 'typeorm';
import { TENANT_KEY, keepApart } from './row-security.js';

/** Laboratories, their work centres with numbered places, and the couriers between them and the clinics. */
export class Laboratories1795600980000 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      CREATE TABLE laboratory (${TENANT_KEY},
        name text NOT NULL CHECK (name <> ''),
        zone text NOT NULL,
        cut_off_local text NOT NULL CHECK (cut_off_local ~ '^([01][0-9]|2[0-3]):[0-5][0-9]$'),
        closed_weekdays integer[] NOT NULL CHECK (closed_weekdays <@ ARRAY[1, 2, 3, 4, 5, 6, 7]),
        partner_organisation_id uuid REFERENCES organisation (id),
        version integer NOT NULL DEFAULT 1);
      ${keepApart('laboratory')}

      CREATE TABLE work_centre (${TENANT_KEY},
        laboratory_id uuid NOT NULL,
        code text NOT NULL CHECK (code ~ '^[a-z0-9]+(-[a-z0-9]+)*$'),
        name text NOT NULL CHECK (name <> ''),
        batch_kind text CHECK (batch_kind IN ('curing-cycle', 'print-plate')),
        batch_size integer CHECK (batch_size >= 1),
        FOREIGN KEY (organisation_id, laboratory_id) REFERENCES laboratory,
        CONSTRAINT work_centre_code_once UNIQUE (organisation_id, laboratory_id, code),
        CONSTRAINT work_centre_batch_complete CHECK ((batch_kind IS NULL) = (batch_size IS NULL)));
      ${keepApart('work_centre')}

      CREATE TABLE bench_place (${TENANT_KEY},
        work_centre_id uuid NOT NULL,
        number integer NOT NULL CHECK (number >= 1),
        label text NOT NULL CHECK (label <> ''),
        FOREIGN KEY (organisation_id, id) REFERENCES resource,
        FOREIGN KEY (organisation_id, work_centre_id) REFERENCES work_centre,
        CONSTRAINT bench_place_number_once UNIQUE (organisation_id, work_centre_id, number));
      ${keepApart('bench_place')}

      CREATE TABLE courier (${TENANT_KEY},
        clinic_id uuid NOT NULL,
        laboratory_id uuid NOT NULL,
        name text NOT NULL,
        to_lab_minutes integer NOT NULL CHECK (to_lab_minutes >= 0),
        to_clinic_minutes integer NOT NULL CHECK (to_clinic_minutes >= 0),
        FOREIGN KEY (organisation_id, clinic_id) REFERENCES clinic,
        FOREIGN KEY (organisation_id, laboratory_id) REFERENCES laboratory);
      ${keepApart('courier')}`);
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query('DROP TABLE courier; DROP TABLE bench_place; DROP TABLE work_centre; DROP TABLE laboratory');
  }
}
