import type { MigrationInterface, QueryRunner } from 'typeorm';

/** A side effect names the request that caused it, so that a mail or a check can be followed back to a click. */
export class OutboxRequest1795607220000 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query('ALTER TABLE outbox ADD COLUMN request_id text');
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query('ALTER TABLE outbox DROP COLUMN request_id');
  }
}
