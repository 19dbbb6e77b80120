import type { MigrationInterface, QueryRunner } from 'typeorm';
import { TENANT_KEY, keepApart } from './row-security.js';

/**
 * What screening compares: one number per capture and subject, the median of its readings or worked out from several of
 * them. A copy that is made again from the readings, for which thousands of them would have to be grouped at each look.
 * What was captured before is taken over as it was read; values worked out from it begin with the next capture.
 */
export class StageValues1795615000031 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      CREATE TABLE stage_value (${TENANT_KEY},
        capture_id uuid NOT NULL,
        stage_id uuid NOT NULL,
        patient_id uuid NOT NULL,
        clinic_id uuid,
        recorded_by uuid NOT NULL,
        recorded_at timestamptz NOT NULL,
        subject text NOT NULL CHECK (subject <> ''),
        code text NOT NULL CHECK (code <> ''),
        arch text CHECK (arch IN ('upper', 'lower')),
        side text CHECK (side IN ('right', 'left')),
        region text,
        method jsonb,
        value double precision NOT NULL CHECK (value NOT IN ('NaN', 'Infinity', '-Infinity')),
        FOREIGN KEY (organisation_id, capture_id) REFERENCES capture,
        FOREIGN KEY (organisation_id, stage_id) REFERENCES stage,
        FOREIGN KEY (organisation_id, patient_id) REFERENCES patient,
        FOREIGN KEY (organisation_id, clinic_id) REFERENCES clinic,
        FOREIGN KEY (organisation_id, recorded_by) REFERENCES user_account,
        CONSTRAINT stage_value_once_per_capture UNIQUE (organisation_id, capture_id, subject));
      CREATE INDEX stage_value_by_subject ON stage_value (organisation_id, subject, recorded_at);
      CREATE INDEX stage_value_by_stage ON stage_value (organisation_id, stage_id);
      ${keepApart('stage_value')}`);
    await this.takeOver(db);
  }

  /** The walls stand aside for that moment. The subject's key is built as `subjectKey` does. */
  private async takeOver(db: QueryRunner): Promise<void> {
    const read = ['capture', 'measurement', 'stage', 'treatment_case', 'stage_value'];
    for (const table of read) await db.query(`ALTER TABLE ${table} NO FORCE ROW LEVEL SECURITY`);
    await db.query(`
      INSERT INTO stage_value (organisation_id, id, capture_id, stage_id, patient_id, clinic_id, recorded_by, recorded_at,
        subject, code, arch, side, region, method, value)
      SELECT k.organisation_id, gen_random_uuid(), k.id, k.stage_id, c.patient_id, k.clinic_id, k.recorded_by,
        k.recorded_at,
        concat_ws('/', m.code, m.arch, m.side, m.region,
          (SELECT string_agg(key || '=' || answer, '/' ORDER BY key COLLATE "C")
           FROM jsonb_each_text(m.method) AS stated (key, answer))),
        m.code, m.arch, m.side, m.region, m.method,
        percentile_cont(0.5) WITHIN GROUP (ORDER BY m.value_number)
      FROM measurement m
        JOIN capture k ON (k.organisation_id, k.id) = (m.organisation_id, m.capture_id)
        JOIN stage g ON (g.organisation_id, g.id) = (k.organisation_id, k.stage_id)
        JOIN treatment_case c ON (c.organisation_id, c.id) = (g.organisation_id, g.case_id)
      WHERE m.value_number IS NOT NULL AND m.code <> 'oral-health-impact-answer'
      GROUP BY k.organisation_id, k.id, k.stage_id, c.patient_id, k.clinic_id, k.recorded_by, k.recorded_at,
        m.code, m.arch, m.side, m.region, m.method`);
    for (const table of read) await db.query(`ALTER TABLE ${table} FORCE ROW LEVEL SECURITY`);
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query('DROP TABLE stage_value');
  }
}
