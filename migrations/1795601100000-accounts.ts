import type { MigrationInterface, QueryRunner } from 'typeorm';
import { APPLICATION_ROLE, TENANT_KEY, keepApart } from './row-security.js';

/**
 * Who may sign in, their sessions, and answers kept for repeated calls. A failed attempt is counted before any
 * organisation is known, by digest only: that table holds nothing of a tenant and stands outside row-level security.
 */
export class Accounts1795601100000 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      CREATE TABLE user_account (${TENANT_KEY},
        name text NOT NULL CHECK (name <> ''),
        role text NOT NULL CHECK (role IN ('front-desk', 'lab', 'clinician', 'manager', 'administrator')),
        password_hash text NOT NULL CHECK (password_hash LIKE '$argon2id$%'),
        mail text,
        locale text NOT NULL,
        clinic_ids uuid[] NOT NULL,
        laboratory_ids uuid[] NOT NULL,
        practitioner_id uuid,
        disabled_at timestamptz,
        version integer NOT NULL DEFAULT 1,
        created_at timestamptz NOT NULL DEFAULT now(),
        FOREIGN KEY (organisation_id, practitioner_id) REFERENCES practitioner);
      ${keepApart('user_account')}
      ALTER TABLE directory ADD CONSTRAINT directory_user_exists
        FOREIGN KEY (organisation_id, user_id) REFERENCES user_account DEFERRABLE INITIALLY DEFERRED;

      CREATE TABLE session (${TENANT_KEY},
        user_id uuid NOT NULL,
        token_hash text NOT NULL,
        created_at timestamptz NOT NULL DEFAULT now(),
        last_seen_at timestamptz NOT NULL DEFAULT now(),
        expires_at timestamptz NOT NULL,
        FOREIGN KEY (organisation_id, user_id) REFERENCES user_account,
        CONSTRAINT session_token_once UNIQUE (organisation_id, token_hash));
      CREATE INDEX session_by_expiry ON session (organisation_id, expires_at);
      ${keepApart('session')}

      CREATE TABLE sign_in_attempt (
        subject_hash text PRIMARY KEY,
        failures integer NOT NULL CHECK (failures >= 0),
        first_failed_at timestamptz NOT NULL,
        blocked_until timestamptz);
      GRANT SELECT, INSERT, UPDATE, DELETE ON sign_in_attempt TO ${APPLICATION_ROLE};

      CREATE TABLE idempotency_key (${TENANT_KEY},
        actor_id uuid NOT NULL,
        route text NOT NULL,
        key text NOT NULL CHECK (key <> ''),
        body_hash text NOT NULL,
        status integer,
        response jsonb,
        etag text,
        created_at timestamptz NOT NULL DEFAULT now(),
        CONSTRAINT idempotency_key_once UNIQUE (organisation_id, actor_id, route, key));
      CREATE INDEX idempotency_key_by_age ON idempotency_key (organisation_id, created_at);
      ${keepApart('idempotency_key')}`);
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query(`
      ALTER TABLE directory DROP CONSTRAINT directory_user_exists;
      DROP TABLE idempotency_key; DROP TABLE sign_in_attempt; DROP TABLE session; DROP TABLE user_account`);
  }
}
