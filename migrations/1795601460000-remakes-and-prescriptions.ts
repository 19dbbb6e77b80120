import type { MigrationInterface, QueryRunner } from 'typeorm';
import { TENANT_KEY, keepApart } from './row-security.js';

/** What happens when something has to be made again or asked: alerts, proposals, pauses, prescriptions, questions. */
export class RemakesAndPrescriptions1795601460000 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      CREATE TABLE remake_alert (${TENANT_KEY},
        case_id uuid NOT NULL,
        stage_id uuid NOT NULL,
        check_verdict_id uuid,
        trigger text NOT NULL,
        reason text NOT NULL,
        return_to_stage text NOT NULL,
        arches text[] NOT NULL CHECK (arches <@ ARRAY['upper', 'lower'] AND cardinality(arches) BETWEEN 1 AND 2),
        discards text[] NOT NULL,
        state text NOT NULL CHECK (state IN ('open', 'planned', 'accepted', 'dismissed')),
        no_proposal_reason text,
        decide_by timestamptz,
        raised_at timestamptz NOT NULL DEFAULT now(),
        raised_by uuid,
        decided_at timestamptz,
        decided_by uuid,
        decision_reason text,
        version integer NOT NULL DEFAULT 1,
        FOREIGN KEY (organisation_id, case_id) REFERENCES treatment_case,
        FOREIGN KEY (organisation_id, stage_id) REFERENCES stage,
        FOREIGN KEY (organisation_id, check_verdict_id) REFERENCES check_verdict,
        FOREIGN KEY (organisation_id, raised_by) REFERENCES user_account,
        FOREIGN KEY (organisation_id, decided_by) REFERENCES user_account,
        CONSTRAINT remake_alert_once_per_verdict UNIQUE (organisation_id, check_verdict_id),
        CONSTRAINT remake_alert_dismissal_has_reason CHECK (state <> 'dismissed' OR decision_reason IS NOT NULL));
      CREATE UNIQUE INDEX remake_alert_one_open_per_stage ON remake_alert (organisation_id, stage_id)
        WHERE state IN ('open', 'planned');
      CREATE INDEX remake_alert_by_case ON remake_alert (organisation_id, case_id);
      ${keepApart('remake_alert')}

      CREATE TABLE replan_proposal (${TENANT_KEY},
        alert_id uuid NOT NULL,
        plan_id uuid NOT NULL,
        plan_hash text NOT NULL,
        label text NOT NULL,
        moved_visits integer NOT NULL CHECK (moved_visits >= 0),
        least_moved_visits integer NOT NULL CHECK (least_moved_visits BETWEEN 0 AND moved_visits),
        other_cases integer NOT NULL CHECK (other_cases >= 0),
        ripples jsonb NOT NULL,
        calls jsonb NOT NULL,
        state text NOT NULL CHECK (state IN ('open', 'accepted', 'superseded')),
        created_at timestamptz NOT NULL DEFAULT now(),
        FOREIGN KEY (organisation_id, alert_id) REFERENCES remake_alert,
        FOREIGN KEY (organisation_id, plan_id) REFERENCES plan);
      CREATE UNIQUE INDEX replan_proposal_once ON replan_proposal (organisation_id, alert_id, plan_hash)
        WHERE state = 'open';
      CREATE UNIQUE INDEX replan_proposal_one_accepted ON replan_proposal (organisation_id, alert_id)
        WHERE state = 'accepted';
      ${keepApart('replan_proposal')}

      CREATE TABLE finding_pause (${TENANT_KEY},
        case_id uuid NOT NULL,
        stage_id uuid NOT NULL,
        check_verdict_id uuid,
        point_of_no_return text NOT NULL,
        reason text NOT NULL,
        answer_by timestamptz NOT NULL,
        state text NOT NULL CHECK (state IN ('open', 'go-on', 'return', 'yielded')),
        answered_at timestamptz,
        answered_by uuid,
        answer text,
        version integer NOT NULL DEFAULT 1,
        created_at timestamptz NOT NULL DEFAULT now(),
        FOREIGN KEY (organisation_id, case_id) REFERENCES treatment_case,
        FOREIGN KEY (organisation_id, stage_id) REFERENCES stage,
        FOREIGN KEY (organisation_id, check_verdict_id) REFERENCES check_verdict,
        FOREIGN KEY (organisation_id, answered_by) REFERENCES user_account,
        CONSTRAINT finding_pause_once_per_verdict UNIQUE (organisation_id, check_verdict_id),
        CONSTRAINT finding_pause_answer_complete CHECK (
          num_nonnulls(answered_at, answered_by) = CASE WHEN state IN ('go-on', 'return') THEN 2 ELSE 0 END));
      CREATE INDEX finding_pause_open ON finding_pause (organisation_id, case_id) WHERE state = 'open';
      ${keepApart('finding_pause')}

      CREATE TABLE prescription (${TENANT_KEY},
        case_id uuid NOT NULL,
        stage_id uuid NOT NULL,
        laboratory_id uuid,
        content jsonb NOT NULL,
        signed_by uuid NOT NULL,
        signed_at timestamptz NOT NULL DEFAULT now(),
        superseded_at timestamptz,
        FOREIGN KEY (organisation_id, case_id) REFERENCES treatment_case,
        FOREIGN KEY (organisation_id, stage_id) REFERENCES stage,
        FOREIGN KEY (organisation_id, laboratory_id) REFERENCES laboratory,
        FOREIGN KEY (organisation_id, signed_by) REFERENCES user_account);
      CREATE UNIQUE INDEX prescription_one_live_per_stage ON prescription (organisation_id, stage_id)
        WHERE superseded_at IS NULL;
      ${keepApart('prescription')}

      CREATE TABLE lab_question (${TENANT_KEY},
        case_id uuid NOT NULL,
        lab_step_id uuid NOT NULL,
        question text NOT NULL CHECK (question <> ''),
        asked_at timestamptz NOT NULL DEFAULT now(),
        asked_by uuid NOT NULL,
        escalates_at timestamptz NOT NULL,
        escalated_at timestamptz,
        answer text,
        answered_at timestamptz,
        answered_by uuid,
        FOREIGN KEY (organisation_id, case_id) REFERENCES treatment_case,
        FOREIGN KEY (organisation_id, lab_step_id) REFERENCES lab_step,
        FOREIGN KEY (organisation_id, asked_by) REFERENCES user_account,
        FOREIGN KEY (organisation_id, answered_by) REFERENCES user_account,
        CONSTRAINT lab_question_answer_complete CHECK (num_nonnulls(answer, answered_at, answered_by) IN (0, 3)));
      CREATE UNIQUE INDEX lab_question_one_open_per_step ON lab_question (organisation_id, lab_step_id)
        WHERE answered_at IS NULL;
      CREATE INDEX lab_question_to_escalate ON lab_question (organisation_id, escalates_at)
        WHERE answered_at IS NULL AND escalated_at IS NULL;
      ${keepApart('lab_question')}`);
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query(`
      DROP TABLE lab_question; DROP TABLE prescription; DROP TABLE finding_pause; DROP TABLE replan_proposal;
      DROP TABLE remake_alert`);
  }
}
