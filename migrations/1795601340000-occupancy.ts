import type { MigrationInterface, QueryRunner } from 'typeorm';
import { TENANT_KEY, keepApart } from './row-security.js';

const ON_GRID = (column: string) =>
  `date_bin('5 minutes', ${column}, TIMESTAMPTZ '2000-01-01 00:00:00+00') = ${column}`;

/**
 * Held and booked time of every resource: it serves one at a time, whatever runs at once. Plain bounds stand beside the
 * range, since under row-level security a range function can't be an index condition.
 */
export class Occupancy1795601340000 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      CREATE TABLE occupancy (${TENANT_KEY},
        resource_id uuid NOT NULL,
        starts_at timestamptz NOT NULL CONSTRAINT occupancy_start_on_grid CHECK (${ON_GRID('starts_at')}),
        ends_at timestamptz NOT NULL CONSTRAINT occupancy_end_on_grid CHECK (${ON_GRID('ends_at')}),
        during tstzrange NOT NULL GENERATED ALWAYS AS (tstzrange(starts_at, ends_at)) STORED,
        purpose text NOT NULL
          CHECK (purpose IN ('visit', 'lab', 'closure', 'absence', 'busy', 'protected', 'travel')),
        hold_id uuid,
        held_until timestamptz,
        appointment_id uuid,
        lab_step_id uuid,
        batch_id uuid,
        closure_id uuid,
        FOREIGN KEY (organisation_id, resource_id) REFERENCES resource,
        FOREIGN KEY (organisation_id, hold_id) REFERENCES hold,
        FOREIGN KEY (organisation_id, appointment_id) REFERENCES appointment,
        FOREIGN KEY (organisation_id, lab_step_id) REFERENCES lab_step,
        FOREIGN KEY (organisation_id, batch_id) REFERENCES batch,
        FOREIGN KEY (organisation_id, closure_id) REFERENCES closure,
        CONSTRAINT occupancy_ends_after_start CHECK (ends_at > starts_at),
        CONSTRAINT occupancy_held_by_a_hold CHECK ((hold_id IS NULL) = (held_until IS NULL)),
        CONSTRAINT occupancy_one_at_a_time EXCLUDE USING gist
          (organisation_id WITH =, resource_id WITH =, during WITH &&) DEFERRABLE INITIALLY IMMEDIATE);
      CREATE INDEX occupancy_by_resource_day ON occupancy (organisation_id, resource_id, starts_at);
      CREATE INDEX occupancy_by_day ON occupancy (organisation_id, starts_at);
      CREATE INDEX occupancy_by_hold ON occupancy (organisation_id, hold_id) WHERE hold_id IS NOT NULL;
      CREATE INDEX occupancy_by_appointment ON occupancy (organisation_id, appointment_id) WHERE appointment_id IS NOT NULL;
      CREATE INDEX occupancy_by_lab_step ON occupancy (organisation_id, lab_step_id) WHERE lab_step_id IS NOT NULL;
      CREATE INDEX occupancy_by_batch ON occupancy (organisation_id, batch_id) WHERE batch_id IS NOT NULL;
      CREATE INDEX occupancy_by_closure ON occupancy (organisation_id, closure_id) WHERE closure_id IS NOT NULL;
      ${keepApart('occupancy')}`);
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query('DROP TABLE occupancy');
  }
}
