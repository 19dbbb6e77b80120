import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * A closure that falls on what is booked has repairs looked for as if somebody had said so. It is taken back with the
 * closure: by nobody where a calendar feed dropped its time.
 */
export class ClosuresThatFallOnVisits1795615000034 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      ALTER TABLE disturbance ADD COLUMN closure_id uuid,
        ADD FOREIGN KEY (organisation_id, closure_id) REFERENCES closure ON DELETE SET NULL (closure_id),
        DROP CONSTRAINT disturbance_decision_complete,
        ADD CONSTRAINT disturbance_decision_complete CHECK (
          (decided_at IS NULL) = (state IN ('open', 'planned'))
          AND CASE WHEN state IN ('accepted', 'kept') THEN decided_by IS NOT NULL
            ELSE decided_by IS NULL OR decided_at IS NOT NULL END);
      CREATE INDEX disturbance_of_closure ON disturbance (organisation_id, closure_id) WHERE closure_id IS NOT NULL`);
  }

  /** What nobody took back is forgotten: the older table has no room for it. */
  async down(db: QueryRunner): Promise<void> {
    await db.query(`
      DELETE FROM disturbance_proposal p USING disturbance d
        WHERE p.organisation_id = d.organisation_id AND p.disturbance_id = d.id
          AND d.state = 'withdrawn' AND d.decided_by IS NULL;
      DELETE FROM disturbance WHERE state = 'withdrawn' AND decided_by IS NULL;
      ALTER TABLE disturbance DROP CONSTRAINT disturbance_decision_complete,
        ADD CONSTRAINT disturbance_decision_complete CHECK (
          num_nonnulls(decided_at, decided_by) = CASE WHEN state IN ('open', 'planned') THEN 0 ELSE 2 END),
        DROP COLUMN closure_id`);
  }
}
