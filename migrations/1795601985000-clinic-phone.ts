import type { MigrationInterface, QueryRunner } from 'typeorm';

/** The number that messages give a patient to call. Null: the message names the clinic instead. */
export class ClinicPhone1795601985000 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`ALTER TABLE clinic ADD COLUMN phone text CHECK (phone <> '')`);
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query('ALTER TABLE clinic DROP COLUMN phone');
  }
}
