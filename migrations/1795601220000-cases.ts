import type { MigrationInterface, QueryRunner } from 'typeorm';
import { APPEND_ONLY, TENANT_KEY, keepApart } from './row-security.js';

/** Published treatment paths, which never change, and cases: one path per arch, stages with rounds, plans and holds. */
export class Cases1795601220000 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      CREATE TABLE treatment_path_version (${TENANT_KEY},
        code text NOT NULL CHECK (code ~ '^[a-z0-9]+(-[a-z0-9]+)*$'),
        version integer NOT NULL CHECK (version >= 1),
        document jsonb NOT NULL,
        document_hash text NOT NULL,
        published_at timestamptz NOT NULL DEFAULT now(),
        published_by uuid,
        FOREIGN KEY (organisation_id, published_by) REFERENCES user_account,
        CONSTRAINT treatment_path_version_once UNIQUE (organisation_id, code, version));
      ${keepApart('treatment_path_version', APPEND_ONLY)}

      CREATE TABLE treatment_path_withdrawal (${TENANT_KEY},
        path_version_id uuid NOT NULL,
        withdrawn_at timestamptz NOT NULL DEFAULT now(),
        withdrawn_by uuid,
        FOREIGN KEY (organisation_id, path_version_id) REFERENCES treatment_path_version,
        FOREIGN KEY (organisation_id, withdrawn_by) REFERENCES user_account,
        CONSTRAINT treatment_path_withdrawal_once UNIQUE (organisation_id, path_version_id));
      ${keepApart('treatment_path_withdrawal')}

      CREATE TABLE case_number_counter (${TENANT_KEY},
        year integer NOT NULL,
        last_number integer NOT NULL CHECK (last_number >= 1),
        CONSTRAINT case_number_counter_one_per_year UNIQUE (organisation_id, year));
      ${keepApart('case_number_counter')}

      CREATE TABLE treatment_case (${TENANT_KEY},
        number text NOT NULL CHECK (number ~ '^[0-9]{2}-[0-9]{4,}$'),
        patient_id uuid NOT NULL,
        state text NOT NULL
          CHECK (state IN ('enquiry', 'open', 'paused', 'transferred', 'abandoned', 'closed', 'ended-by-death')),
        state_reason text,
        review_on date,
        consent_on date,
        treatment_approved_on date,
        medicines_asked_on date,
        parent_case_id uuid,
        home_clinic_id uuid NOT NULL,
        clinic_ids uuid[] NOT NULL,
        clinician_id uuid,
        wishes jsonb NOT NULL,
        version integer NOT NULL DEFAULT 1,
        opened_at timestamptz NOT NULL DEFAULT now(),
        closed_at timestamptz,
        FOREIGN KEY (organisation_id, patient_id) REFERENCES patient,
        FOREIGN KEY (organisation_id, parent_case_id) REFERENCES treatment_case,
        FOREIGN KEY (organisation_id, home_clinic_id) REFERENCES clinic,
        FOREIGN KEY (organisation_id, clinician_id) REFERENCES practitioner,
        CONSTRAINT treatment_case_number_once UNIQUE (organisation_id, number),
        CONSTRAINT treatment_case_pause_has_reason CHECK (state NOT IN ('paused', 'abandoned') OR state_reason IS NOT NULL));
      CREATE INDEX treatment_case_by_patient ON treatment_case (organisation_id, patient_id);
      CREATE INDEX treatment_case_by_state ON treatment_case (organisation_id, state, review_on);
      ${keepApart('treatment_case')}

      CREATE TABLE case_arch (${TENANT_KEY},
        case_id uuid NOT NULL,
        arch text NOT NULL CHECK (arch IN ('upper', 'lower')),
        path_version_id uuid NOT NULL,
        provisional boolean NOT NULL DEFAULT false,
        FOREIGN KEY (organisation_id, case_id) REFERENCES treatment_case,
        FOREIGN KEY (organisation_id, path_version_id) REFERENCES treatment_path_version,
        CONSTRAINT case_arch_once UNIQUE (organisation_id, case_id, arch));
      ${keepApart('case_arch')}

      CREATE TABLE stage (${TENANT_KEY},
        case_id uuid NOT NULL,
        code text NOT NULL CHECK (code ~ '^[A-Za-z][A-Za-z0-9-]{0,39}$'),
        position integer NOT NULL CHECK (position >= 0),
        round integer NOT NULL DEFAULT 1 CHECK (round >= 1),
        arches text[] NOT NULL CHECK (arches <@ ARRAY['upper', 'lower'] AND cardinality(arches) BETWEEN 1 AND 2),
        state text NOT NULL
          CHECK (state IN ('waiting', 'planned', 'ready', 'in-progress', 'passed', 'repeated', 'dropped')),
        due_on date,
        completed_at timestamptz,
        completed_by uuid,
        note text,
        version integer NOT NULL DEFAULT 1,
        FOREIGN KEY (organisation_id, case_id) REFERENCES treatment_case,
        FOREIGN KEY (organisation_id, completed_by) REFERENCES user_account,
        CONSTRAINT stage_round_once UNIQUE (organisation_id, case_id, code, round));
      ${keepApart('stage')}

      CREATE TABLE plan (${TENANT_KEY},
        case_id uuid NOT NULL,
        kind text NOT NULL CHECK (kind IN ('offer', 'booking', 'ripple', 'proposal')),
        label text NOT NULL,
        document jsonb NOT NULL,
        plan_hash text NOT NULL,
        instance_hash text NOT NULL,
        based_on jsonb NOT NULL,
        code_version text NOT NULL,
        seed integer NOT NULL,
        streams integer NOT NULL CHECK (streams >= 1),
        epochs integer NOT NULL CHECK (epochs >= 0),
        objective jsonb NOT NULL,
        bound jsonb,
        created_at timestamptz NOT NULL DEFAULT now(),
        created_by uuid,
        FOREIGN KEY (organisation_id, case_id) REFERENCES treatment_case,
        FOREIGN KEY (organisation_id, created_by) REFERENCES user_account);
      CREATE INDEX plan_by_case ON plan (organisation_id, case_id, created_at);
      ${keepApart('plan')}

      CREATE TABLE hold (${TENANT_KEY},
        case_id uuid NOT NULL,
        plan_id uuid NOT NULL,
        kind text NOT NULL CHECK (kind IN ('phone', 'provisional')),
        state text NOT NULL CHECK (state IN ('active', 'confirmed', 'released', 'expired')),
        expires_at timestamptz NOT NULL,
        version integer NOT NULL DEFAULT 1,
        created_at timestamptz NOT NULL DEFAULT now(),
        created_by uuid,
        FOREIGN KEY (organisation_id, case_id) REFERENCES treatment_case,
        FOREIGN KEY (organisation_id, plan_id) REFERENCES plan,
        FOREIGN KEY (organisation_id, created_by) REFERENCES user_account);
      CREATE UNIQUE INDEX hold_one_active_per_case ON hold (organisation_id, case_id) WHERE state = 'active';
      CREATE INDEX hold_by_expiry ON hold (organisation_id, expires_at) WHERE state = 'active';
      ${keepApart('hold')}`);
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query(`
      DROP TABLE hold; DROP TABLE plan; DROP TABLE stage; DROP TABLE case_arch; DROP TABLE treatment_case;
      DROP TABLE case_number_counter; DROP TABLE treatment_path_withdrawal; DROP TABLE treatment_path_version`);
  }
}
