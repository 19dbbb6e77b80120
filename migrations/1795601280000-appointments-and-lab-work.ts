import type { MigrationInterface, QueryRunner } from 'typeorm';
import { TENANT_KEY, keepApart } from './row-security.js';

/** Visits with the stages they serve, laboratory steps with the batches they share, and courier legs. */
export class AppointmentsAndLabWork1795601280000 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      CREATE TABLE appointment (${TENANT_KEY},
        patient_id uuid NOT NULL,
        clinic_id uuid NOT NULL,
        chair_id uuid,
        clinician_id uuid NOT NULL,
        assistant_id uuid,
        hold_id uuid,
        starts_at timestamptz NOT NULL,
        ends_at timestamptz NOT NULL,
        travel_before_minutes integer NOT NULL DEFAULT 0 CHECK (travel_before_minutes >= 0),
        travel_after_minutes integer NOT NULL DEFAULT 0 CHECK (travel_after_minutes >= 0),
        state text NOT NULL CHECK (state IN
          ('held', 'provisional', 'booked', 'arrived', 'in-progress', 'completed', 'cancelled', 'missed')),
        state_reason text,
        uid text NOT NULL,
        sequence integer NOT NULL DEFAULT 0 CHECK (sequence >= 0),
        confirmed_by_patient_at timestamptz,
        arrived_at timestamptz,
        started_at timestamptz,
        finished_at timestamptz,
        version integer NOT NULL DEFAULT 1,
        created_at timestamptz NOT NULL DEFAULT now(),
        FOREIGN KEY (organisation_id, patient_id) REFERENCES patient,
        FOREIGN KEY (organisation_id, clinic_id) REFERENCES clinic,
        FOREIGN KEY (organisation_id, chair_id) REFERENCES chair,
        FOREIGN KEY (organisation_id, clinician_id) REFERENCES practitioner,
        FOREIGN KEY (organisation_id, assistant_id) REFERENCES practitioner,
        FOREIGN KEY (organisation_id, hold_id) REFERENCES hold,
        CONSTRAINT appointment_ends_after_start CHECK (ends_at > starts_at),
        CONSTRAINT appointment_uid_once UNIQUE (organisation_id, uid),
        CONSTRAINT appointment_held_by_a_hold CHECK (state NOT IN ('held', 'provisional') OR hold_id IS NOT NULL));
      CREATE INDEX appointment_by_clinic_day ON appointment (organisation_id, clinic_id, starts_at);
      CREATE INDEX appointment_by_clinician_day ON appointment (organisation_id, clinician_id, starts_at);
      CREATE INDEX appointment_by_patient ON appointment (organisation_id, patient_id, starts_at);
      CREATE INDEX appointment_by_hold ON appointment (organisation_id, hold_id);
      ${keepApart('appointment')}

      CREATE TABLE appointment_stage (${TENANT_KEY},
        appointment_id uuid NOT NULL,
        stage_id uuid NOT NULL,
        FOREIGN KEY (organisation_id, appointment_id) REFERENCES appointment ON DELETE CASCADE,
        FOREIGN KEY (organisation_id, stage_id) REFERENCES stage,
        CONSTRAINT appointment_stage_once UNIQUE (organisation_id, appointment_id, stage_id));
      CREATE INDEX appointment_stage_by_stage ON appointment_stage (organisation_id, stage_id);
      ${keepApart('appointment_stage')}

      CREATE TABLE home_visit (${TENANT_KEY},
        appointment_id uuid NOT NULL,
        place_kind text NOT NULL CHECK (place_kind IN ('home', 'care-home')),
        travel_block_minutes integer NOT NULL CHECK (travel_block_minutes >= 0),
        access_note text,
        FOREIGN KEY (organisation_id, appointment_id) REFERENCES appointment ON DELETE CASCADE,
        CONSTRAINT home_visit_once UNIQUE (organisation_id, appointment_id));
      ${keepApart('home_visit')}

      CREATE TABLE batch (${TENANT_KEY},
        place_id uuid NOT NULL,
        kind text NOT NULL CHECK (kind IN ('curing-cycle', 'print-plate')),
        starts_at timestamptz NOT NULL,
        ends_at timestamptz NOT NULL,
        size integer NOT NULL CHECK (size >= 1),
        used integer NOT NULL CHECK (used >= 0),
        FOREIGN KEY (organisation_id, place_id) REFERENCES bench_place,
        CONSTRAINT batch_ends_after_start CHECK (ends_at > starts_at),
        CONSTRAINT batch_not_overfilled CHECK (used <= size));
      CREATE INDEX batch_by_place ON batch (organisation_id, place_id, starts_at);
      ${keepApart('batch')}

      CREATE TABLE lab_step (${TENANT_KEY},
        case_id uuid NOT NULL,
        code text NOT NULL CHECK (code ~ '^[a-z0-9]+(-[a-z0-9]+)*$'),
        arches text[] NOT NULL CHECK (arches <@ ARRAY['upper', 'lower'] AND cardinality(arches) BETWEEN 1 AND 2),
        round integer NOT NULL DEFAULT 1 CHECK (round >= 1),
        phase text NOT NULL,
        after_stage text NOT NULL,
        before_stage text NOT NULL,
        laboratory_id uuid,
        work_centre_id uuid,
        place_id uuid,
        batch_id uuid,
        hold_id uuid,
        starts_at timestamptz,
        ends_at timestamptz,
        segments jsonb NOT NULL,
        state text NOT NULL CHECK (state IN
          ('unplanned', 'planned', 'ready', 'started', 'paused', 'finished', 'rejected', 'discarded')),
        state_reason text,
        started_at timestamptz,
        finished_at timestamptz,
        version integer NOT NULL DEFAULT 1,
        FOREIGN KEY (organisation_id, case_id) REFERENCES treatment_case,
        FOREIGN KEY (organisation_id, laboratory_id) REFERENCES laboratory,
        FOREIGN KEY (organisation_id, work_centre_id) REFERENCES work_centre,
        FOREIGN KEY (organisation_id, place_id) REFERENCES bench_place,
        FOREIGN KEY (organisation_id, batch_id) REFERENCES batch,
        FOREIGN KEY (organisation_id, hold_id) REFERENCES hold,
        CONSTRAINT lab_step_ends_after_start CHECK (ends_at > starts_at),
        CONSTRAINT lab_step_planned_has_time CHECK (
          num_nonnulls(starts_at, ends_at, laboratory_id, work_centre_id) = 4 OR
          state IN ('unplanned', 'rejected', 'discarded')));
      CREATE UNIQUE INDEX lab_step_round_once ON lab_step (organisation_id, case_id, code, arches, round)
        WHERE state <> 'discarded';
      CREATE INDEX lab_step_by_laboratory_day ON lab_step (organisation_id, laboratory_id, starts_at);
      CREATE INDEX lab_step_by_hold ON lab_step (organisation_id, hold_id);
      ${keepApart('lab_step')}

      CREATE TABLE batch_member (${TENANT_KEY},
        batch_id uuid NOT NULL,
        lab_step_id uuid NOT NULL,
        units integer NOT NULL CHECK (units >= 1),
        FOREIGN KEY (organisation_id, batch_id) REFERENCES batch,
        FOREIGN KEY (organisation_id, lab_step_id) REFERENCES lab_step ON DELETE CASCADE,
        CONSTRAINT batch_member_once UNIQUE (organisation_id, lab_step_id));
      CREATE INDEX batch_member_by_batch ON batch_member (organisation_id, batch_id);
      ${keepApart('batch_member')}

      CREATE TABLE courier_leg (${TENANT_KEY},
        case_id uuid NOT NULL,
        courier_id uuid,
        hold_id uuid,
        direction text NOT NULL CHECK (direction IN ('to-lab', 'to-clinic')),
        after_stage text,
        before_stage text,
        departs_at timestamptz NOT NULL,
        arrives_at timestamptz NOT NULL CHECK (arrives_at >= departs_at),
        state text NOT NULL CHECK (state IN ('planned', 'under-way', 'arrived', 'cancelled')),
        FOREIGN KEY (organisation_id, case_id) REFERENCES treatment_case,
        FOREIGN KEY (organisation_id, courier_id) REFERENCES courier,
        FOREIGN KEY (organisation_id, hold_id) REFERENCES hold);
      CREATE INDEX courier_leg_by_case ON courier_leg (organisation_id, case_id);
      CREATE INDEX courier_leg_by_day ON courier_leg (organisation_id, courier_id, departs_at);
      ${keepApart('courier_leg')}`);
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query(`
      DROP TABLE courier_leg; DROP TABLE batch_member; DROP TABLE lab_step; DROP TABLE batch; DROP TABLE home_visit;
      DROP TABLE appointment_stage; DROP TABLE appointment`);
  }
}
