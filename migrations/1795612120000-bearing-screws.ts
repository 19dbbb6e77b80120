import type { MigrationInterface, QueryRunner } from 'typeorm';
import { TENANT_KEY, keepApart } from './row-security.js';

/** The central bearing screw of a tracing set, as its maker states it: one per kit. */
export class BearingScrews1795612120000 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      CREATE TABLE bearing_screw (${TENANT_KEY},
        kit_id uuid NOT NULL,
        pitch_mm double precision NOT NULL CHECK (pitch_mm BETWEEN 0.1 AND 3),
        raises_by text NOT NULL CHECK (raises_by IN ('clockwise', 'counter-clockwise')),
        stated_at timestamptz NOT NULL,
        stated_by uuid,
        FOREIGN KEY (organisation_id, kit_id) REFERENCES kit,
        FOREIGN KEY (organisation_id, stated_by) REFERENCES user_account,
        CONSTRAINT bearing_screw_once UNIQUE (organisation_id, kit_id));
      ${keepApart('bearing_screw')}`);
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query('DROP TABLE bearing_screw');
  }
}
