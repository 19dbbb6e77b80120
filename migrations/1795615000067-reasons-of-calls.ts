import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Why a patient is to be called, by code beside the English sentence. */
export class ReasonsOfCalls1795615000067 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query('ALTER TABLE call_task ADD COLUMN told jsonb');
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query('ALTER TABLE call_task DROP COLUMN told');
  }
}
