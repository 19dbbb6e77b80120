import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Keeps answers as they were written: `jsonb` reorders fields, and a repeat is to get the first answer byte by byte. */
export class IdempotentAnswerText1795607280000 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query('ALTER TABLE idempotency_key ALTER COLUMN response TYPE json');
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query('ALTER TABLE idempotency_key ALTER COLUMN response TYPE jsonb');
  }
}
