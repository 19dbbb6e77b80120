import type { MigrationInterface, QueryRunner } from 'typeorm';
import { TENANT_KEY, keepApart } from './row-security.js';

/**
 * What a clinic measures with, under its own names, and which of it a capture was taken with: a device that wears out
 * shows in its readings. Findings may be about a device or a bench.
 */
export class Devices1795615000032 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      CREATE TABLE device (${TENANT_KEY},
        clinic_id uuid NOT NULL,
        name text NOT NULL CHECK (name <> ''),
        measures text NOT NULL CHECK (measures IN ('lengths', 'angles', 'tracings')),
        retired_at timestamptz,
        version integer NOT NULL DEFAULT 1,
        FOREIGN KEY (organisation_id, clinic_id) REFERENCES clinic,
        CONSTRAINT device_name_once UNIQUE (organisation_id, clinic_id, name));
      ${keepApart('device')}

      ALTER TABLE capture ADD COLUMN chair_id uuid, ADD COLUMN device_ids uuid[] NOT NULL DEFAULT '{}',
        ADD FOREIGN KEY (organisation_id, chair_id) REFERENCES chair;
      CREATE INDEX capture_with_device ON capture (organisation_id, chair_id, recorded_at) WHERE device_ids <> '{}';

      ALTER TABLE stage_value ADD COLUMN device_id uuid, ADD FOREIGN KEY (organisation_id, device_id) REFERENCES device;

      ALTER TABLE screening_finding ADD COLUMN device_id uuid, ADD COLUMN work_centre_id uuid,
        ADD FOREIGN KEY (organisation_id, device_id) REFERENCES device,
        ADD FOREIGN KEY (organisation_id, work_centre_id) REFERENCES work_centre,
        DROP CONSTRAINT screening_finding_compared_with_check,
        ADD CONSTRAINT screening_finding_compared_with_check CHECK (compared_with IN ('own-change', 'clinic',
          'organisation', 'own-series', 'clinic-series', 'device-series', 'laboratories', 'laboratory-series',
          'work-centre-series'))`);
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query(`
      ALTER TABLE screening_finding NO FORCE ROW LEVEL SECURITY;
      DELETE FROM screening_finding WHERE compared_with IN ('device-series', 'laboratory-series', 'work-centre-series');
      ALTER TABLE screening_finding FORCE ROW LEVEL SECURITY;
      ALTER TABLE screening_finding DROP COLUMN device_id, DROP COLUMN work_centre_id,
        DROP CONSTRAINT screening_finding_compared_with_check,
        ADD CONSTRAINT screening_finding_compared_with_check CHECK (compared_with IN ('own-change', 'clinic',
          'organisation', 'own-series', 'clinic-series', 'laboratories'));
      ALTER TABLE stage_value DROP COLUMN device_id;
      ALTER TABLE capture DROP COLUMN chair_id, DROP COLUMN device_ids;
      DROP TABLE device`);
  }
}
