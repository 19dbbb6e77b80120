import type { MigrationInterface, QueryRunner } from 'typeorm';
import { APPEND_ONLY, TENANT_KEY, keepApart } from './row-security.js';

/** Version 1 is what the catalogue ships: it has no row, so that a practice's first change is version 2. */
export class MeasurementSettings1795612000000 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      CREATE TABLE measurement_settings (${TENANT_KEY},
        version integer NOT NULL CHECK (version >= 2),
        usual jsonb NOT NULL CHECK (jsonb_typeof(usual) = 'object'),
        limits jsonb NOT NULL CHECK (jsonb_typeof(limits) = 'object'),
        reason text NOT NULL CHECK (length(reason) >= 3),
        changed_at timestamptz NOT NULL,
        changed_by uuid NOT NULL,
        FOREIGN KEY (organisation_id, changed_by) REFERENCES user_account,
        CONSTRAINT measurement_settings_version_once UNIQUE (organisation_id, version));
      ${keepApart('measurement_settings', APPEND_ONLY)}`);
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query('DROP TABLE measurement_settings');
  }
}
