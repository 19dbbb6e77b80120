import type { MigrationInterface, QueryRunner } from 'typeorm';
import { TENANT_KEY, keepApart } from './row-security.js';

/** Photographs of a visit. One that is taken away leaves who kept it, who took it away and why, and no picture. */
export class Photographs1795615000035 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      CREATE TABLE photograph (${TENANT_KEY},
        stage_id uuid NOT NULL,
        caption text NOT NULL CHECK (caption <> ''),
        width_px integer NOT NULL CHECK (width_px >= 1),
        height_px integer NOT NULL CHECK (height_px >= 1),
        picture bytea,
        recorded_at timestamptz NOT NULL,
        recorded_by uuid NOT NULL,
        removed_at timestamptz,
        removed_by uuid,
        removal_reason text,
        FOREIGN KEY (organisation_id, stage_id) REFERENCES stage,
        FOREIGN KEY (organisation_id, recorded_by) REFERENCES user_account,
        FOREIGN KEY (organisation_id, removed_by) REFERENCES user_account,
        CONSTRAINT photograph_removed_whole CHECK (
          num_nulls(removed_at, removed_by, removal_reason) = CASE WHEN picture IS NULL THEN 0 ELSE 3 END));
      CREATE INDEX photograph_by_stage ON photograph (organisation_id, stage_id, recorded_at);
      ${keepApart('photograph')}`);
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query('DROP TABLE photograph');
  }
}
