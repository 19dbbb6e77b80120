import type { MigrationInterface, QueryRunner } from 'typeorm';
import { TENANT_KEY, keepApart } from './row-security.js';

/** What is recorded at the chair and the verdicts drawn from it. A verdict is superseded, never rewritten. */
export class CapturesAndChecks1795601400000 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      CREATE TABLE capture (${TENANT_KEY},
        stage_id uuid NOT NULL,
        clinic_id uuid,
        other_centric_relation jsonb NOT NULL,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        recorded_by uuid NOT NULL,
        checked_at timestamptz,
        superseded_at timestamptz,
        FOREIGN KEY (organisation_id, stage_id) REFERENCES stage,
        FOREIGN KEY (organisation_id, clinic_id) REFERENCES clinic,
        FOREIGN KEY (organisation_id, recorded_by) REFERENCES user_account);
      CREATE INDEX capture_by_stage ON capture (organisation_id, stage_id, recorded_at);
      CREATE INDEX capture_unchecked ON capture (organisation_id, recorded_at) WHERE checked_at IS NULL;
      ${keepApart('capture')}

      CREATE TABLE measurement (${TENANT_KEY},
        capture_id uuid NOT NULL,
        stage_id uuid NOT NULL,
        code text NOT NULL CHECK (code <> ''),
        reading integer NOT NULL DEFAULT 1 CHECK (reading >= 1),
        value_number double precision CHECK (value_number NOT IN ('NaN', 'Infinity', '-Infinity')),
        value_text text,
        value_boolean boolean,
        unit text,
        arch text CHECK (arch IN ('upper', 'lower')),
        side text CHECK (side IN ('right', 'left')),
        region text,
        method jsonb,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        recorded_by uuid NOT NULL,
        FOREIGN KEY (organisation_id, capture_id) REFERENCES capture,
        FOREIGN KEY (organisation_id, stage_id) REFERENCES stage,
        FOREIGN KEY (organisation_id, recorded_by) REFERENCES user_account,
        CONSTRAINT measurement_one_value CHECK (num_nonnulls(value_number, value_text, value_boolean) = 1));
      CREATE INDEX measurement_by_capture ON measurement (organisation_id, capture_id);
      CREATE INDEX measurement_by_code ON measurement (organisation_id, code, recorded_at);
      ${keepApart('measurement')}

      CREATE TABLE tracing (${TENANT_KEY},
        capture_id uuid NOT NULL,
        stage_id uuid NOT NULL,
        attempt integer NOT NULL CHECK (attempt >= 1),
        entry jsonb NOT NULL,
        points jsonb,
        evaluation jsonb,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        FOREIGN KEY (organisation_id, capture_id) REFERENCES capture,
        FOREIGN KEY (organisation_id, stage_id) REFERENCES stage,
        CONSTRAINT tracing_attempt_once UNIQUE (organisation_id, capture_id, attempt));
      ${keepApart('tracing')}

      CREATE TABLE checklist_mark (${TENANT_KEY},
        stage_id uuid NOT NULL,
        code text NOT NULL,
        done boolean NOT NULL,
        count integer CHECK (count >= 0),
        marked_at timestamptz NOT NULL DEFAULT now(),
        marked_by uuid NOT NULL,
        FOREIGN KEY (organisation_id, stage_id) REFERENCES stage,
        FOREIGN KEY (organisation_id, marked_by) REFERENCES user_account,
        CONSTRAINT checklist_mark_once UNIQUE (organisation_id, stage_id, code));
      ${keepApart('checklist_mark')}

      CREATE TABLE check_verdict (${TENANT_KEY},
        capture_id uuid NOT NULL,
        stage_id uuid NOT NULL,
        rule text NOT NULL,
        rule_version text NOT NULL CHECK (rule_version <> ''),
        arch text CHECK (arch IN ('upper', 'lower')),
        verdict text NOT NULL CHECK (verdict IN ('pass', 'caution', 'fail')),
        action text NOT NULL CHECK (action IN ('go-on', 'correct-in-chair', 'repeat', 'return-to-stage')),
        reason text NOT NULL,
        value_shown text,
        limit_shown text,
        source text NOT NULL,
        standing text NOT NULL,
        caution text,
        decided_at timestamptz NOT NULL DEFAULT now(),
        superseded_at timestamptz,
        FOREIGN KEY (organisation_id, capture_id) REFERENCES capture,
        FOREIGN KEY (organisation_id, stage_id) REFERENCES stage,
        CONSTRAINT check_verdict_once_per_capture UNIQUE NULLS NOT DISTINCT (organisation_id, capture_id, rule, arch));
      CREATE INDEX check_verdict_by_stage ON check_verdict (organisation_id, stage_id);
      ${keepApart('check_verdict')}

      CREATE TABLE gate_override (${TENANT_KEY},
        stage_id uuid NOT NULL,
        gate text NOT NULL,
        reason text NOT NULL CHECK (length(reason) >= 10),
        overridden_at timestamptz NOT NULL DEFAULT now(),
        overridden_by uuid NOT NULL,
        FOREIGN KEY (organisation_id, stage_id) REFERENCES stage,
        FOREIGN KEY (organisation_id, overridden_by) REFERENCES user_account,
        CONSTRAINT gate_override_once UNIQUE (organisation_id, stage_id, gate));
      ${keepApart('gate_override')}`);
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query(`
      DROP TABLE gate_override; DROP TABLE check_verdict; DROP TABLE checklist_mark; DROP TABLE tracing;
      DROP TABLE measurement; DROP TABLE capture`);
  }
}
