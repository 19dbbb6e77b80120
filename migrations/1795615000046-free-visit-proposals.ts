import type { MigrationInterface, QueryRunner } from 'typeorm';

const KINDS = "'within-slack', 'level-load', 'overtime', 'other-laboratory'";

/** Proposals of a search for better plans may also choose visits again that are free still; the others move none. */
export class FreeVisitProposals1795615000046 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      ALTER TABLE workload_proposal NO FORCE ROW LEVEL SECURITY;
      UPDATE workload_proposal SET shown = shown || '{"visits": []}';
      ALTER TABLE workload_proposal FORCE ROW LEVEL SECURITY;
      ALTER TABLE workload_proposal DROP CONSTRAINT workload_proposal_kind_check;
      ALTER TABLE workload_proposal ADD CONSTRAINT workload_proposal_kind_check CHECK (kind IN (${KINDS}, 'free-visits'))`);
  }

  /** Accepted ones go, too: what they moved is in the history of each case. */
  async down(db: QueryRunner): Promise<void> {
    await db.query(`
      ALTER TABLE workload_proposal NO FORCE ROW LEVEL SECURITY;
      DELETE FROM workload_proposal WHERE kind = 'free-visits';
      UPDATE workload_proposal SET shown = shown - 'visits';
      ALTER TABLE workload_proposal FORCE ROW LEVEL SECURITY;
      ALTER TABLE workload_proposal DROP CONSTRAINT workload_proposal_kind_check;
      ALTER TABLE workload_proposal ADD CONSTRAINT workload_proposal_kind_check CHECK (kind IN (${KINDS}))`);
  }
}
