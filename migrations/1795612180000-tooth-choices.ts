import type { MigrationInterface, QueryRunner } from 'typeorm';
import { APPEND_ONLY, TENANT_KEY, keepApart } from './row-security.js';

/** Which teeth a patient is to have, as it was settled at a visit. Written once: a later choice is the next version. */
export class ToothChoices1795612180000 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      CREATE TABLE tooth_choice (${TENANT_KEY},
        case_id uuid NOT NULL,
        stage_id uuid NOT NULL,
        version integer NOT NULL CHECK (version >= 2),
        wish text NOT NULL,
        arrangement text NOT NULL,
        shade text NOT NULL,
        mould text NOT NULL,
        decided_by text CHECK (decided_by IN ('patient', 'companion-with-permission', 'legal-representative')),
        measured jsonb NOT NULL CHECK (jsonb_typeof(measured) = 'array'),
        recorded_at timestamptz NOT NULL,
        recorded_by uuid NOT NULL,
        FOREIGN KEY (organisation_id, case_id) REFERENCES treatment_case,
        FOREIGN KEY (organisation_id, stage_id) REFERENCES stage,
        FOREIGN KEY (organisation_id, recorded_by) REFERENCES user_account,
        CONSTRAINT tooth_choice_version_once UNIQUE (organisation_id, case_id, version));
      ${keepApart('tooth_choice', APPEND_ONLY)}`);
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query('DROP TABLE tooth_choice');
  }
}
