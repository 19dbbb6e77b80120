import type { MigrationInterface, QueryRunner } from 'typeorm';

/** What a practice consists of is changed by several people: each row that is changed as one carries a version. */
export class SetupVersions1795614000000 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      ALTER TABLE resource ADD COLUMN version integer NOT NULL DEFAULT 1;
      ALTER TABLE work_centre ADD COLUMN version integer NOT NULL DEFAULT 1;
      ALTER TABLE courier ADD COLUMN version integer NOT NULL DEFAULT 1, ADD COLUMN retired_at timestamptz;
      ALTER TABLE closure ADD COLUMN version integer NOT NULL DEFAULT 1`);
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query(`
      ALTER TABLE closure DROP COLUMN version;
      ALTER TABLE courier DROP COLUMN retired_at, DROP COLUMN version;
      ALTER TABLE work_centre DROP COLUMN version;
      ALTER TABLE resource DROP COLUMN version`);
  }
}
