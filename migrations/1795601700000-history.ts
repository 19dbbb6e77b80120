import type { MigrationInterface, QueryRunner } from 'typeorm';
import { APPEND_ONLY, TENANT_KEY, keepApart } from './row-security.js';

/**
 * What happened and what must still happen. Case events and audit entries are written once: the application may neither
 * change nor delete them. Seals chain committed entries afterwards, so that writers don't queue behind each other.
 */
export class History1795601700000 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      CREATE TABLE case_event (${TENANT_KEY},
        case_id uuid NOT NULL,
        sequence integer NOT NULL CHECK (sequence >= 1),
        kind text NOT NULL CHECK (kind ~ '^[a-z0-9]+(-[a-z0-9]+)*$'),
        body jsonb NOT NULL,
        actor_id uuid,
        happened_at timestamptz NOT NULL DEFAULT now(),
        FOREIGN KEY (organisation_id, case_id) REFERENCES treatment_case,
        FOREIGN KEY (organisation_id, actor_id) REFERENCES user_account,
        CONSTRAINT case_event_sequence_once UNIQUE (organisation_id, case_id, sequence));
      ${keepApart('case_event', APPEND_ONLY)}

      CREATE TABLE outbox (${TENANT_KEY},
        kind text NOT NULL CHECK (kind ~ '^[a-z0-9]+(-[a-z0-9]+)*$'),
        payload jsonb NOT NULL,
        due_at timestamptz NOT NULL DEFAULT now(),
        dispatched_at timestamptz,
        attempts integer NOT NULL DEFAULT 0 CHECK (attempts >= 0),
        created_at timestamptz NOT NULL DEFAULT now());
      CREATE INDEX outbox_due ON outbox (organisation_id, due_at) WHERE dispatched_at IS NULL;
      ${keepApart('outbox')}

      CREATE TABLE audit_entry (${TENANT_KEY},
        happened_at timestamptz NOT NULL DEFAULT now(),
        actor_id uuid,
        action text NOT NULL CHECK (action <> ''),
        subject_kind text NOT NULL,
        subject_id uuid,
        request_id text,
        details jsonb NOT NULL,
        FOREIGN KEY (organisation_id, actor_id) REFERENCES user_account);
      CREATE INDEX audit_entry_by_time ON audit_entry (organisation_id, happened_at);
      CREATE INDEX audit_entry_by_subject ON audit_entry (organisation_id, subject_id);
      ${keepApart('audit_entry', APPEND_ONLY)}

      CREATE TABLE audit_seal (${TENANT_KEY},
        sequence integer NOT NULL CHECK (sequence >= 1),
        entry_id uuid NOT NULL,
        previous_hash text NOT NULL,
        hash text NOT NULL,
        sealed_at timestamptz NOT NULL DEFAULT now(),
        FOREIGN KEY (organisation_id, entry_id) REFERENCES audit_entry,
        CONSTRAINT audit_seal_sequence_once UNIQUE (organisation_id, sequence),
        CONSTRAINT audit_seal_entry_once UNIQUE (organisation_id, entry_id));
      ${keepApart('audit_seal', APPEND_ONLY)}`);
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query('DROP TABLE audit_seal; DROP TABLE audit_entry; DROP TABLE outbox; DROP TABLE case_event');
  }
}
