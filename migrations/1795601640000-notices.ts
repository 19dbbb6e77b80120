import type { MigrationInterface, QueryRunner } from 'typeorm';
import { TENANT_KEY, keepApart } from './row-security.js';

/**
 * Reminders, notices that follow a change, and the call list. A reminder is one intent per visit, channel and lead
 * time, under a message id that every attempt repeats, so that a receiver can drop a copy.
 */
export class Notices1795601640000 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      CREATE TABLE reminder (${TENANT_KEY},
        appointment_id uuid NOT NULL,
        channel text NOT NULL CHECK (channel IN ('mail', 'phone')),
        lead_minutes integer NOT NULL CHECK (lead_minutes > 0),
        message_id text NOT NULL,
        due_at timestamptz NOT NULL,
        state text NOT NULL CHECK (state IN ('scheduled', 'sent', 'withdrawn', 'failed')),
        sequence integer NOT NULL DEFAULT 0 CHECK (sequence >= 0),
        attempts integer NOT NULL DEFAULT 0 CHECK (attempts >= 0),
        sent_at timestamptz,
        last_error text,
        FOREIGN KEY (organisation_id, appointment_id) REFERENCES appointment,
        CONSTRAINT reminder_one_intent UNIQUE (organisation_id, appointment_id, channel, lead_minutes),
        CONSTRAINT reminder_message_id_once UNIQUE (organisation_id, message_id),
        CONSTRAINT reminder_sent_has_time CHECK (state <> 'sent' OR sent_at IS NOT NULL));
      CREATE INDEX reminder_due ON reminder (organisation_id, due_at) WHERE state = 'scheduled';
      ${keepApart('reminder')}

      CREATE TABLE notice (${TENANT_KEY},
        kind text NOT NULL CHECK (kind ~ '^[a-z0-9]+(-[a-z0-9]+)*$'),
        recipient text NOT NULL CHECK (recipient IN ('patient', 'clinic', 'laboratory', 'clinician')),
        patient_id uuid,
        user_id uuid,
        clinic_id uuid,
        laboratory_id uuid,
        case_id uuid,
        appointment_id uuid,
        alert_id uuid,
        subject_sequence integer NOT NULL DEFAULT 0,
        message_id text NOT NULL,
        state text NOT NULL CHECK (state IN ('scheduled', 'sent', 'withdrawn', 'failed')),
        due_at timestamptz NOT NULL DEFAULT now(),
        attempts integer NOT NULL DEFAULT 0 CHECK (attempts >= 0),
        sent_at timestamptz,
        last_error text,
        created_at timestamptz NOT NULL DEFAULT now(),
        FOREIGN KEY (organisation_id, patient_id) REFERENCES patient,
        FOREIGN KEY (organisation_id, user_id) REFERENCES user_account,
        FOREIGN KEY (organisation_id, clinic_id) REFERENCES clinic,
        FOREIGN KEY (organisation_id, laboratory_id) REFERENCES laboratory,
        FOREIGN KEY (organisation_id, case_id) REFERENCES treatment_case,
        FOREIGN KEY (organisation_id, appointment_id) REFERENCES appointment,
        FOREIGN KEY (organisation_id, alert_id) REFERENCES remake_alert,
        CONSTRAINT notice_message_id_once UNIQUE (organisation_id, message_id));
      CREATE INDEX notice_due ON notice (organisation_id, due_at) WHERE state = 'scheduled';
      ${keepApart('notice')}

      CREATE TABLE call_task (${TENANT_KEY},
        patient_id uuid NOT NULL,
        case_id uuid,
        appointment_id uuid,
        reminder_id uuid,
        alert_id uuid,
        reason text NOT NULL CHECK (reason <> ''),
        state text NOT NULL CHECK (state IN ('open', 'done')),
        due_at timestamptz NOT NULL,
        version integer NOT NULL DEFAULT 1,
        created_at timestamptz NOT NULL DEFAULT now(),
        FOREIGN KEY (organisation_id, patient_id) REFERENCES patient,
        FOREIGN KEY (organisation_id, case_id) REFERENCES treatment_case,
        FOREIGN KEY (organisation_id, appointment_id) REFERENCES appointment,
        FOREIGN KEY (organisation_id, reminder_id) REFERENCES reminder,
        FOREIGN KEY (organisation_id, alert_id) REFERENCES remake_alert,
        CONSTRAINT call_task_once_per_reminder UNIQUE (organisation_id, reminder_id));
      CREATE INDEX call_task_open ON call_task (organisation_id, due_at) WHERE state = 'open';
      ${keepApart('call_task')}

      CREATE TABLE call_attempt (${TENANT_KEY},
        call_task_id uuid NOT NULL,
        outcome text NOT NULL CHECK (outcome IN ('reached', 'no-answer', 'left-message', 'asks-to-move', 'declined')),
        attempted_at timestamptz NOT NULL DEFAULT now(),
        attempted_by uuid NOT NULL,
        FOREIGN KEY (organisation_id, call_task_id) REFERENCES call_task,
        FOREIGN KEY (organisation_id, attempted_by) REFERENCES user_account);
      CREATE INDEX call_attempt_by_task ON call_attempt (organisation_id, call_task_id);
      ${keepApart('call_attempt')}`);
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query('DROP TABLE call_attempt; DROP TABLE call_task; DROP TABLE notice; DROP TABLE reminder');
  }
}
