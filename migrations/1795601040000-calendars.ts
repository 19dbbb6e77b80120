import type { MigrationInterface, QueryRunner } from 'typeorm';
import { TENANT_KEY, keepApart } from './row-security.js';

/**
 * Recurring hours in local wall time, closures and absences, protected minutes, and calendars read from outside.
 * A closure is the truth about absence; the occupancy of the same resource is what refuses a booking.
 */
export class Calendars1795601040000 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      CREATE TABLE protected_time (${TENANT_KEY},
        clinic_id uuid NOT NULL,
        reason text NOT NULL,
        released_hours_before integer NOT NULL CHECK (released_hours_before >= 0),
        FOREIGN KEY (organisation_id, clinic_id) REFERENCES clinic);
      ${keepApart('protected_time')}

      CREATE TABLE calendar_rule (${TENANT_KEY},
        clinic_id uuid,
        practitioner_id uuid,
        laboratory_id uuid,
        work_centre_id uuid,
        courier_id uuid,
        protected_time_id uuid,
        at_clinic_id uuid,
        direction text CHECK (direction IN ('to-lab', 'to-clinic')),
        start_on date NOT NULL,
        starts_local text NOT NULL CHECK (starts_local ~ '^([01][0-9]|2[0-3]):[0-5][0-9]$'),
        minutes integer NOT NULL CHECK (minutes BETWEEN 0 AND 1440),
        rrule text NOT NULL CHECK (rrule ~ '^FREQ='),
        except_local text[] NOT NULL,
        FOREIGN KEY (organisation_id, clinic_id) REFERENCES clinic,
        FOREIGN KEY (organisation_id, practitioner_id) REFERENCES practitioner,
        FOREIGN KEY (organisation_id, laboratory_id) REFERENCES laboratory,
        FOREIGN KEY (organisation_id, work_centre_id) REFERENCES work_centre,
        FOREIGN KEY (organisation_id, courier_id) REFERENCES courier,
        FOREIGN KEY (organisation_id, protected_time_id) REFERENCES protected_time,
        FOREIGN KEY (organisation_id, at_clinic_id) REFERENCES clinic,
        CONSTRAINT calendar_rule_one_subject CHECK (
          num_nonnulls(clinic_id, practitioner_id, laboratory_id, work_centre_id, courier_id, protected_time_id) = 1),
        CONSTRAINT calendar_rule_person_at_clinic CHECK ((practitioner_id IS NULL) = (at_clinic_id IS NULL)),
        CONSTRAINT calendar_rule_courier_direction CHECK ((courier_id IS NULL) = (direction IS NULL)),
        CONSTRAINT calendar_rule_only_couriers_take_no_time CHECK ((courier_id IS NULL) = (minutes > 0)));
      ${keepApart('calendar_rule')}

      CREATE TABLE imported_calendar (${TENANT_KEY},
        resource_id uuid NOT NULL,
        source text NOT NULL,
        content_hash text NOT NULL,
        imported_at timestamptz NOT NULL,
        FOREIGN KEY (organisation_id, resource_id) REFERENCES resource,
        CONSTRAINT imported_calendar_source_once UNIQUE (organisation_id, resource_id, source));
      ${keepApart('imported_calendar')}

      CREATE TABLE closure (${TENANT_KEY},
        clinic_id uuid,
        laboratory_id uuid,
        work_centre_id uuid,
        resource_id uuid,
        from_on date,
        until_on date,
        starts_at timestamptz,
        ends_at timestamptz,
        reason text NOT NULL,
        imported_calendar_id uuid,
        source_uid text,
        FOREIGN KEY (organisation_id, clinic_id) REFERENCES clinic,
        FOREIGN KEY (organisation_id, laboratory_id) REFERENCES laboratory,
        FOREIGN KEY (organisation_id, work_centre_id) REFERENCES work_centre,
        FOREIGN KEY (organisation_id, resource_id) REFERENCES resource,
        FOREIGN KEY (organisation_id, imported_calendar_id) REFERENCES imported_calendar,
        CONSTRAINT closure_one_subject CHECK (num_nonnulls(clinic_id, laboratory_id, work_centre_id, resource_id) = 1),
        CONSTRAINT closure_dates_or_instants CHECK (
          (num_nonnulls(from_on, until_on) = 2 AND num_nonnulls(starts_at, ends_at) = 0 AND until_on > from_on) OR
          (num_nonnulls(from_on, until_on) = 0 AND num_nonnulls(starts_at, ends_at) = 2 AND ends_at > starts_at)));
      CREATE INDEX closure_by_resource ON closure (organisation_id, resource_id);
      CREATE INDEX closure_by_import ON closure (organisation_id, imported_calendar_id);
      ${keepApart('closure')}`);
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query(
      'DROP TABLE closure; DROP TABLE imported_calendar; DROP TABLE calendar_rule; DROP TABLE protected_time',
    );
  }
}
