import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * The transaction that wrote a row of history. Ids and times are given before a commit, so that a row may appear behind
 * one that was read already; the number of its transaction tells from when on nothing can appear there any more.
 */
export class ChangeOrder1795615000000 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    for (const table of ['case_event', 'audit_entry']) {
      await db.query(`
        ALTER TABLE ${table} ADD COLUMN written_in bigint NOT NULL DEFAULT (pg_current_xact_id()::text::bigint);
        CREATE INDEX ${table}_by_transaction ON ${table} (organisation_id, written_in)`);
    }
  }

  async down(db: QueryRunner): Promise<void> {
    for (const table of ['audit_entry', 'case_event']) await db.query(`ALTER TABLE ${table} DROP COLUMN written_in`);
  }
}
