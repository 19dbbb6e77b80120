import type { MigrationInterface, QueryRunner } from 'typeorm';
import { TENANT_KEY, keepApart } from './row-security.js';

/**
 * What falls away: time of a person, room, bench place, clinic, laboratory or courier, or one visit or piece of work that
 * is late; and the plans that would repair what it breaks. Nothing moves until a person accepts one of them.
 */
export class Disturbances1795611000000 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      CREATE TABLE disturbance (${TENANT_KEY},
        resource_id uuid,
        clinic_id uuid,
        work_centre_id uuid,
        laboratory_id uuid,
        courier_id uuid,
        lab_step_id uuid,
        appointment_id uuid,
        starts_at timestamptz NOT NULL,
        ends_at timestamptz NOT NULL CHECK (ends_at > starts_at),
        reason text NOT NULL CHECK (reason <> ''),
        state text NOT NULL CHECK (state IN ('open', 'planned', 'accepted', 'kept', 'withdrawn')),
        no_proposal_reason text,
        entered_at timestamptz NOT NULL DEFAULT now(),
        entered_by uuid,
        decided_at timestamptz,
        decided_by uuid,
        version integer NOT NULL DEFAULT 1,
        FOREIGN KEY (organisation_id, resource_id) REFERENCES resource,
        FOREIGN KEY (organisation_id, clinic_id) REFERENCES clinic,
        FOREIGN KEY (organisation_id, work_centre_id) REFERENCES work_centre,
        FOREIGN KEY (organisation_id, laboratory_id) REFERENCES laboratory,
        FOREIGN KEY (organisation_id, courier_id) REFERENCES courier,
        FOREIGN KEY (organisation_id, lab_step_id) REFERENCES lab_step,
        FOREIGN KEY (organisation_id, appointment_id) REFERENCES appointment,
        FOREIGN KEY (organisation_id, entered_by) REFERENCES user_account,
        FOREIGN KEY (organisation_id, decided_by) REFERENCES user_account,
        CONSTRAINT disturbance_takes_one_thing CHECK (num_nonnulls(resource_id, clinic_id, work_centre_id,
          laboratory_id, courier_id, lab_step_id, appointment_id) = 1),
        CONSTRAINT disturbance_decision_complete CHECK (
          num_nonnulls(decided_at, decided_by) = CASE WHEN state IN ('open', 'planned') THEN 0 ELSE 2 END));
      CREATE INDEX disturbance_undecided ON disturbance (organisation_id, starts_at) WHERE state IN ('open', 'planned');
      ${keepApart('disturbance')}

      CREATE TABLE disturbance_proposal (${TENANT_KEY},
        disturbance_id uuid NOT NULL,
        plan_hash text NOT NULL,
        label text NOT NULL,
        rung text NOT NULL,
        moved_visits integer NOT NULL CHECK (moved_visits >= 0),
        least_moved_visits integer NOT NULL CHECK (least_moved_visits BETWEEN 0 AND moved_visits),
        other_cases integer NOT NULL CHECK (other_cases >= 0),
        left_case_ids uuid[] NOT NULL,
        ripples jsonb NOT NULL,
        state text NOT NULL CHECK (state IN ('open', 'accepted', 'superseded')),
        created_at timestamptz NOT NULL DEFAULT now(),
        FOREIGN KEY (organisation_id, disturbance_id) REFERENCES disturbance);
      CREATE UNIQUE INDEX disturbance_proposal_once ON disturbance_proposal (organisation_id, disturbance_id, plan_hash)
        WHERE state = 'open';
      CREATE UNIQUE INDEX disturbance_proposal_one_accepted ON disturbance_proposal (organisation_id, disturbance_id)
        WHERE state = 'accepted';
      ${keepApart('disturbance_proposal')}`);
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query('DROP TABLE disturbance_proposal; DROP TABLE disturbance');
  }
}
