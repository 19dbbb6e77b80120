import type { MigrationInterface, QueryRunner } from 'typeorm';
import { TENANT_KEY, keepApart } from './row-security.js';

/**
 * Checks are judged again when a rule or a practice's range changes: one capture then has several verdicts of a rule, one
 * of them in force. Overrides name the rules that they set aside.
 */
export class RejudgedChecks1795612060000 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      ALTER TABLE check_verdict DROP CONSTRAINT check_verdict_once_per_capture;
      CREATE UNIQUE INDEX check_verdict_one_in_force ON check_verdict (organisation_id, capture_id, rule, arch)
        NULLS NOT DISTINCT WHERE superseded_at IS NULL;

      ALTER TABLE gate_override ADD COLUMN rules text[] NOT NULL DEFAULT '{}';

      CREATE TABLE check_edition (${TENANT_KEY},
        fingerprint text NOT NULL CHECK (fingerprint <> ''),
        started_at timestamptz NOT NULL,
        finished_at timestamptz,
        stages_judged integer NOT NULL DEFAULT 0 CHECK (stages_judged >= 0),
        verdicts_changed integer NOT NULL DEFAULT 0 CHECK (verdicts_changed >= 0),
        CONSTRAINT check_edition_once UNIQUE (organisation_id, fingerprint));
      ${keepApart('check_edition')}`);
  }

  /** Refused where something was judged again: the older shape has no room for it. */
  async down(db: QueryRunner): Promise<void> {
    await db.query(`
      DROP TABLE check_edition;
      ALTER TABLE gate_override DROP COLUMN rules;
      DROP INDEX check_verdict_one_in_force;
      ALTER TABLE check_verdict ADD CONSTRAINT check_verdict_once_per_capture
        UNIQUE NULLS NOT DISTINCT (organisation_id, capture_id, rule, arch)`);
  }
}
