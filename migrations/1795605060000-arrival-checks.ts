import type { MigrationInterface, QueryRunner } from 'typeorm';
import { TENANT_KEY, keepApart } from './row-security.js';

/**
 * Whether the laboratory's work for a booked visit is there some days before it, once per visit as it is timed: a visit
 * that moves is looked at anew. An open row asks a person to decide while the patient can still be called.
 */
export class ArrivalChecks1795605060000 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      CREATE TABLE arrival_check (${TENANT_KEY},
        case_id uuid NOT NULL,
        stage_id uuid NOT NULL,
        appointment_id uuid NOT NULL,
        appointment_sequence integer NOT NULL,
        state text NOT NULL CHECK (state IN ('on-its-way', 'arrived', 'open', 'decided', 'withdrawn')),
        missing text[] NOT NULL DEFAULT '{}',
        reason text,
        look_at timestamptz NOT NULL,
        raised_at timestamptz,
        call_task_id uuid,
        decision text CHECK (decision IN ('wait', 'move')),
        decision_note text,
        decided_at timestamptz,
        decided_by uuid,
        version integer NOT NULL DEFAULT 1,
        created_at timestamptz NOT NULL DEFAULT now(),
        FOREIGN KEY (organisation_id, case_id) REFERENCES treatment_case,
        FOREIGN KEY (organisation_id, stage_id) REFERENCES stage,
        FOREIGN KEY (organisation_id, appointment_id) REFERENCES appointment ON DELETE CASCADE,
        FOREIGN KEY (organisation_id, call_task_id) REFERENCES call_task,
        FOREIGN KEY (organisation_id, decided_by) REFERENCES user_account,
        CONSTRAINT arrival_check_once_per_timing UNIQUE (organisation_id, stage_id, appointment_id, appointment_sequence),
        CONSTRAINT arrival_check_open_says_why CHECK (state <> 'open' OR num_nonnulls(reason, raised_at) = 2),
        CONSTRAINT arrival_check_decision_complete CHECK (
          num_nonnulls(decision, decided_at, decided_by) = CASE state WHEN 'decided' THEN 3 ELSE 0 END));
      CREATE INDEX arrival_check_to_look_at ON arrival_check (organisation_id, look_at)
        WHERE state IN ('on-its-way', 'open');
      CREATE INDEX arrival_check_by_case ON arrival_check (organisation_id, case_id);
      ${keepApart('arrival_check')}`);
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query('DROP TABLE arrival_check');
  }
}
