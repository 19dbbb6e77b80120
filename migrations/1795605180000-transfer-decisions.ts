import type { MigrationInterface, QueryRunner } from 'typeorm';

const STATES = `'proposed', 'accepted', 'declined'`;

/** A transfer may be taken back by those who proposed it, and every decision says why. */
export class TransferDecisions1795605180000 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      ALTER TABLE transfer
        DROP CONSTRAINT transfer_state_check,
        ADD CONSTRAINT transfer_state_check CHECK (state IN (${STATES}, 'withdrawn')),
        ADD COLUMN decision_reason text,
        ADD COLUMN version integer NOT NULL DEFAULT 1,
        ADD CONSTRAINT transfer_decision_complete CHECK (
          num_nonnulls(decided_at, decided_by) = CASE state WHEN 'proposed' THEN 0 ELSE 2 END);
      CREATE INDEX transfer_to_clinic ON transfer (organisation_id, to_clinic_id) WHERE state = 'proposed'`);
  }

  /** What was taken back was not taken over either. The walls stand aside for that moment. */
  async down(db: QueryRunner): Promise<void> {
    await db.query('ALTER TABLE transfer NO FORCE ROW LEVEL SECURITY');
    await db.query(`UPDATE transfer SET state = 'declined' WHERE state = 'withdrawn'`);
    await db.query(`
      DROP INDEX transfer_to_clinic;
      ALTER TABLE transfer
        DROP CONSTRAINT transfer_state_check, DROP CONSTRAINT transfer_decision_complete,
        DROP COLUMN decision_reason, DROP COLUMN version,
        ADD CONSTRAINT transfer_state_check CHECK (state IN (${STATES}));
      ALTER TABLE transfer FORCE ROW LEVEL SECURITY`);
  }
}
