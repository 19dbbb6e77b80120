import type { MigrationInterface, QueryRunner } from 'typeorm';
import { TENANT_KEY, keepApart } from './row-security.js';

/**
 * What stands out among measurements and remakes, for a person to look at; nothing waits for it. One row per effect,
 * whatever ran twice. A chart of one person's readings is for that person alone.
 */
export class ScreeningFindings1795608000000 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      ALTER TABLE capture ADD COLUMN screened_at timestamptz;
      CREATE INDEX capture_unscreened ON capture (organisation_id, checked_at)
        WHERE screened_at IS NULL AND superseded_at IS NULL AND checked_at IS NOT NULL;

      CREATE TABLE screening_night (${TENANT_KEY},
        night_on date NOT NULL,
        started_at timestamptz NOT NULL,
        finished_at timestamptz,
        CONSTRAINT screening_night_once UNIQUE (organisation_id, night_on));
      ${keepApart('screening_night')}

      CREATE TABLE screening_finding (${TENANT_KEY},
        effect text NOT NULL CHECK (effect <> ''),
        kind text NOT NULL CHECK (kind IN ('value', 'drift', 'share')),
        compared_with text NOT NULL CHECK (
          compared_with IN ('own-change', 'clinic', 'organisation', 'own-series', 'clinic-series', 'laboratories')),
        group_size integer NOT NULL CHECK (group_size >= 0),
        code text,
        capture_id uuid,
        stage_id uuid,
        clinic_id uuid,
        laboratory_id uuid,
        for_user_id uuid,
        evidence jsonb NOT NULL,
        sentence text NOT NULL CHECK (sentence <> ''),
        found_at timestamptz NOT NULL,
        seen_at timestamptz,
        seen_by uuid,
        version integer NOT NULL DEFAULT 1,
        FOREIGN KEY (organisation_id, capture_id) REFERENCES capture,
        FOREIGN KEY (organisation_id, stage_id) REFERENCES stage,
        FOREIGN KEY (organisation_id, clinic_id) REFERENCES clinic,
        FOREIGN KEY (organisation_id, laboratory_id) REFERENCES laboratory,
        FOREIGN KEY (organisation_id, for_user_id) REFERENCES user_account,
        FOREIGN KEY (organisation_id, seen_by) REFERENCES user_account,
        CONSTRAINT screening_finding_once UNIQUE (organisation_id, effect),
        CONSTRAINT screening_finding_seen_by_someone CHECK (num_nonnulls(seen_at, seen_by) IN (0, 2)),
        CONSTRAINT screening_finding_of_something CHECK (
          CASE kind WHEN 'value' THEN num_nonnulls(code, capture_id, stage_id, clinic_id) = 4
            WHEN 'drift' THEN code IS NOT NULL AND num_nonnulls(clinic_id, for_user_id) = 1
            ELSE laboratory_id IS NOT NULL END));
      CREATE INDEX screening_finding_by_stage ON screening_finding (organisation_id, stage_id);
      ${keepApart('screening_finding')}`);
    await this.leaveOldCapturesAlone(db);
  }

  /** What was captured before there was any screening is not looked at one by one. The walls stand aside for that moment. */
  private async leaveOldCapturesAlone(db: QueryRunner): Promise<void> {
    await db.query('ALTER TABLE capture NO FORCE ROW LEVEL SECURITY');
    await db.query('UPDATE capture SET screened_at = checked_at');
    await db.query('ALTER TABLE capture FORCE ROW LEVEL SECURITY');
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query(`
      DROP TABLE screening_finding; DROP TABLE screening_night;
      DROP INDEX capture_unscreened; ALTER TABLE capture DROP COLUMN screened_at`);
  }
}
