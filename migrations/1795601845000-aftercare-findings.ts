import type { MigrationInterface, QueryRunner } from 'typeorm';

/** What is asked about a sore spot and said about an adjustment, and how a recall was settled. */
export class AftercareFindings1795601845000 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      ALTER TABLE sore_spot
        ADD COLUMN pain integer NOT NULL CHECK (pain BETWEEN 0 AND 10),
        ADD COLUMN suspected_cause text NOT NULL CHECK (suspected_cause ~ '^[a-z]+(-[a-z]+)*$');
      ALTER TABLE adjustment
        ADD COLUMN arch text NOT NULL CHECK (arch IN ('upper', 'lower')),
        ADD COLUMN surface text NOT NULL
          CHECK (surface IN ('border', 'fitting-surface', 'polished-surface', 'occlusal-surface')),
        ADD COLUMN amount text NOT NULL CHECK (amount <> '');
      ALTER TABLE recall
        ADD COLUMN reason text,
        ADD COLUMN version integer NOT NULL DEFAULT 1,
        ADD CONSTRAINT recall_declined_has_reason CHECK (state <> 'declined' OR reason IS NOT NULL)`);
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query(`
      ALTER TABLE recall DROP COLUMN reason, DROP COLUMN version;
      ALTER TABLE adjustment DROP COLUMN arch, DROP COLUMN surface, DROP COLUMN amount;
      ALTER TABLE sore_spot DROP COLUMN pain, DROP COLUMN suspected_cause`);
  }
}
