import type { MigrationInterface, QueryRunner } from 'typeorm';
import { TENANT_KEY, keepApart } from './row-security.js';

/**
 * Searches for better plans of a laboratory's work, and what they propose; nothing moves until a person accepts. A
 * laboratory has one search under way at most, and of the proposals of a run one is accepted at most.
 */
export class WorkloadRuns1795610000000 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      CREATE TABLE workload_run (${TENANT_KEY},
        laboratory_id uuid NOT NULL,
        state text NOT NULL CHECK (state IN ('asked', 'running', 'finished', 'cancelled', 'failed')),
        weeks integer NOT NULL CHECK (weeks BETWEEN 1 AND 8),
        seconds integer NOT NULL CHECK (seconds BETWEEN 1 AND 120),
        seed integer NOT NULL,
        streams integer NOT NULL CHECK (streams > 0),
        epochs integer NOT NULL DEFAULT 0 CHECK (epochs >= 0),
        doing text,
        stands jsonb,
        before jsonb,
        instance_hash text,
        failure text,
        asked_at timestamptz NOT NULL,
        asked_by uuid,
        finished_at timestamptz,
        version integer NOT NULL DEFAULT 1,
        FOREIGN KEY (organisation_id, laboratory_id) REFERENCES laboratory,
        FOREIGN KEY (organisation_id, asked_by) REFERENCES user_account,
        CONSTRAINT workload_run_ends CHECK ((finished_at IS NULL) = (state IN ('asked', 'running'))),
        CONSTRAINT workload_run_failure_in_words CHECK ((failure IS NOT NULL) = (state = 'failed')));
      CREATE UNIQUE INDEX workload_run_one_under_way ON workload_run (organisation_id, laboratory_id)
        WHERE state IN ('asked', 'running');
      CREATE INDEX workload_run_latest ON workload_run (organisation_id, laboratory_id, asked_at DESC);
      ${keepApart('workload_run')}

      CREATE TABLE workload_proposal (${TENANT_KEY},
        run_id uuid NOT NULL,
        kind text NOT NULL CHECK (kind IN ('within-slack', 'level-load', 'overtime', 'other-laboratory')),
        moves jsonb NOT NULL,
        shown jsonb NOT NULL,
        seed integer NOT NULL,
        streams integer NOT NULL,
        epochs integer NOT NULL,
        objective jsonb NOT NULL,
        bound jsonb NOT NULL,
        state text NOT NULL CHECK (state IN ('open', 'accepted', 'superseded')),
        decided_at timestamptz,
        decided_by uuid,
        version integer NOT NULL DEFAULT 1,
        FOREIGN KEY (organisation_id, run_id) REFERENCES workload_run,
        FOREIGN KEY (organisation_id, decided_by) REFERENCES user_account,
        CONSTRAINT workload_proposal_once UNIQUE (organisation_id, run_id, kind),
        CONSTRAINT workload_proposal_decided CHECK ((decided_at IS NOT NULL) = (state = 'accepted')));
      CREATE UNIQUE INDEX workload_proposal_one_accepted ON workload_proposal (organisation_id, run_id)
        WHERE state = 'accepted';
      ${keepApart('workload_proposal')}`);
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query('DROP TABLE workload_proposal; DROP TABLE workload_run');
  }
}
