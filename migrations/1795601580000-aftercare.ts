import type { MigrationInterface, QueryRunner } from 'typeorm';
import { TENANT_KEY, keepApart } from './row-security.js';

/** After placement: sore spots, adjustments, referral tasks, recalls; and the transfer of a case to another clinic. */
export class Aftercare1795601580000 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      CREATE TABLE sore_spot (${TENANT_KEY},
        case_id uuid NOT NULL,
        arch text NOT NULL CHECK (arch IN ('upper', 'lower')),
        region text NOT NULL CHECK (region <> ''),
        side text NOT NULL CHECK (side IN ('left', 'right', 'midline')),
        found_on date NOT NULL,
        found_by uuid NOT NULL,
        resolved_on date CHECK (resolved_on >= found_on),
        note text,
        version integer NOT NULL DEFAULT 1,
        FOREIGN KEY (organisation_id, case_id) REFERENCES treatment_case,
        FOREIGN KEY (organisation_id, found_by) REFERENCES user_account);
      CREATE INDEX sore_spot_by_case ON sore_spot (organisation_id, case_id);
      CREATE INDEX sore_spot_open ON sore_spot (organisation_id, found_on) WHERE resolved_on IS NULL;
      ${keepApart('sore_spot')}

      CREATE TABLE adjustment (${TENANT_KEY},
        case_id uuid NOT NULL,
        stage_id uuid,
        sore_spot_id uuid,
        what text NOT NULL CHECK (what <> ''),
        done_at timestamptz NOT NULL DEFAULT now(),
        done_by uuid NOT NULL,
        FOREIGN KEY (organisation_id, case_id) REFERENCES treatment_case,
        FOREIGN KEY (organisation_id, stage_id) REFERENCES stage,
        FOREIGN KEY (organisation_id, sore_spot_id) REFERENCES sore_spot,
        FOREIGN KEY (organisation_id, done_by) REFERENCES user_account);
      CREATE INDEX adjustment_by_case ON adjustment (organisation_id, case_id);
      ${keepApart('adjustment')}

      CREATE TABLE referral_task (${TENANT_KEY},
        case_id uuid NOT NULL,
        sore_spot_id uuid,
        reason text NOT NULL,
        due_on date NOT NULL,
        state text NOT NULL CHECK (state IN ('open', 'referred', 'declined', 'resolved')),
        decided_at timestamptz,
        decided_by uuid,
        decision_note text,
        version integer NOT NULL DEFAULT 1,
        created_at timestamptz NOT NULL DEFAULT now(),
        FOREIGN KEY (organisation_id, case_id) REFERENCES treatment_case,
        FOREIGN KEY (organisation_id, sore_spot_id) REFERENCES sore_spot,
        FOREIGN KEY (organisation_id, decided_by) REFERENCES user_account,
        CONSTRAINT referral_task_once_per_spot UNIQUE (organisation_id, sore_spot_id));
      ${keepApart('referral_task')}

      CREATE TABLE recall (${TENANT_KEY},
        case_id uuid NOT NULL,
        kind text NOT NULL CHECK (kind <> ''),
        due_on date NOT NULL,
        state text NOT NULL CHECK (state IN ('due', 'booked', 'done', 'declined', 'withdrawn')),
        appointment_id uuid,
        FOREIGN KEY (organisation_id, case_id) REFERENCES treatment_case,
        FOREIGN KEY (organisation_id, appointment_id) REFERENCES appointment,
        CONSTRAINT recall_once UNIQUE (organisation_id, case_id, kind, due_on),
        CONSTRAINT recall_booked_has_visit CHECK (state <> 'booked' OR appointment_id IS NOT NULL));
      CREATE INDEX recall_due ON recall (organisation_id, due_on) WHERE state = 'due';
      ${keepApart('recall')}

      CREATE TABLE transfer (${TENANT_KEY},
        case_id uuid NOT NULL,
        from_clinic_id uuid NOT NULL,
        to_clinic_id uuid,
        to_name text,
        reason text NOT NULL,
        state text NOT NULL CHECK (state IN ('proposed', 'accepted', 'declined')),
        proposed_at timestamptz NOT NULL DEFAULT now(),
        proposed_by uuid NOT NULL,
        decided_at timestamptz,
        decided_by uuid,
        FOREIGN KEY (organisation_id, case_id) REFERENCES treatment_case,
        FOREIGN KEY (organisation_id, from_clinic_id) REFERENCES clinic,
        FOREIGN KEY (organisation_id, to_clinic_id) REFERENCES clinic,
        FOREIGN KEY (organisation_id, proposed_by) REFERENCES user_account,
        FOREIGN KEY (organisation_id, decided_by) REFERENCES user_account,
        CONSTRAINT transfer_one_destination CHECK (num_nonnulls(to_clinic_id, to_name) = 1),
        CONSTRAINT transfer_leaves_the_clinic CHECK (to_clinic_id <> from_clinic_id));
      CREATE UNIQUE INDEX transfer_one_proposed_per_case ON transfer (organisation_id, case_id) WHERE state = 'proposed';
      ${keepApart('transfer')}`);
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query(`
      DROP TABLE transfer; DROP TABLE recall; DROP TABLE referral_task; DROP TABLE adjustment; DROP TABLE sore_spot`);
  }
}
