import type { MigrationInterface, QueryRunner } from 'typeorm';
import { TENANT_KEY, keepApart } from './row-security.js';

/** Objects that change hands, the parcels they travel in, their disinfection, and the lots of material in them. */
export class Custody1795601520000 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      CREATE TABLE custody_object (${TENANT_KEY},
        case_id uuid NOT NULL,
        code text NOT NULL CHECK (code <> ''),
        kind text NOT NULL CHECK (kind IN ('impression', 'cast', 'base', 'rim', 'old-denture', 'tracing-plate',
          'jaw-relation-record', 'trial-denture', 'denture', 'scan-file', 'other')),
        arch text CHECK (arch IN ('upper', 'lower')),
        round integer NOT NULL DEFAULT 1 CHECK (round >= 1),
        holder text NOT NULL CHECK (holder IN ('patient', 'clinic', 'courier', 'laboratory', 'nobody')),
        clinic_id uuid,
        laboratory_id uuid,
        place text,
        use_by timestamptz,
        state text NOT NULL
          CHECK (state IN ('expected', 'in-use', 'in-transit', 'quarantined', 'given-to-patient', 'discarded', 'lost')),
        state_reason text,
        version integer NOT NULL DEFAULT 1,
        created_at timestamptz NOT NULL DEFAULT now(),
        FOREIGN KEY (organisation_id, case_id) REFERENCES treatment_case,
        FOREIGN KEY (organisation_id, clinic_id) REFERENCES clinic,
        FOREIGN KEY (organisation_id, laboratory_id) REFERENCES laboratory,
        CONSTRAINT custody_object_code_once UNIQUE (organisation_id, code),
        CONSTRAINT custody_object_quarantine_has_reason CHECK (state <> 'quarantined' OR state_reason IS NOT NULL));
      CREATE INDEX custody_object_by_case ON custody_object (organisation_id, case_id);
      ${keepApart('custody_object')}

      CREATE TABLE parcel (${TENANT_KEY},
        courier_leg_id uuid,
        clinic_id uuid NOT NULL,
        laboratory_id uuid NOT NULL,
        direction text NOT NULL CHECK (direction IN ('to-lab', 'to-clinic')),
        state text NOT NULL CHECK (state IN ('packed', 'handed-over', 'received', 'reconciled')),
        packed_at timestamptz NOT NULL,
        packed_by uuid NOT NULL,
        handed_over_at timestamptz,
        received_at timestamptz,
        received_by uuid,
        reconciled_at timestamptz,
        reconciled_by uuid,
        version integer NOT NULL DEFAULT 1,
        FOREIGN KEY (organisation_id, courier_leg_id) REFERENCES courier_leg,
        FOREIGN KEY (organisation_id, clinic_id) REFERENCES clinic,
        FOREIGN KEY (organisation_id, laboratory_id) REFERENCES laboratory,
        FOREIGN KEY (organisation_id, packed_by) REFERENCES user_account,
        FOREIGN KEY (organisation_id, received_by) REFERENCES user_account,
        FOREIGN KEY (organisation_id, reconciled_by) REFERENCES user_account,
        CONSTRAINT parcel_state_has_its_time CHECK (CASE state
          WHEN 'handed-over' THEN handed_over_at IS NOT NULL
          WHEN 'received' THEN received_at IS NOT NULL
          WHEN 'reconciled' THEN received_at IS NOT NULL AND reconciled_at IS NOT NULL
          ELSE true END));
      ${keepApart('parcel')}

      CREATE TABLE parcel_object (${TENANT_KEY},
        parcel_id uuid NOT NULL,
        object_id uuid NOT NULL,
        found text CHECK (found IN ('present', 'missing', 'unexpected', 'damaged')),
        FOREIGN KEY (organisation_id, parcel_id) REFERENCES parcel,
        FOREIGN KEY (organisation_id, object_id) REFERENCES custody_object,
        CONSTRAINT parcel_object_once UNIQUE (organisation_id, parcel_id, object_id));
      ${keepApart('parcel_object')}

      CREATE TABLE disinfection_record (${TENANT_KEY},
        stage_id uuid NOT NULL,
        object_id uuid,
        agent text NOT NULL CHECK (agent <> ''),
        disinfected_at timestamptz NOT NULL,
        recorded_by uuid NOT NULL,
        FOREIGN KEY (organisation_id, stage_id) REFERENCES stage,
        FOREIGN KEY (organisation_id, object_id) REFERENCES custody_object,
        FOREIGN KEY (organisation_id, recorded_by) REFERENCES user_account);
      CREATE INDEX disinfection_record_by_stage ON disinfection_record (organisation_id, stage_id);
      ${keepApart('disinfection_record')}

      CREATE TABLE material_lot (${TENANT_KEY},
        case_id uuid NOT NULL,
        lab_step_id uuid,
        material text NOT NULL,
        lot text NOT NULL CHECK (lot <> ''),
        expires_on date,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        recorded_by uuid NOT NULL,
        FOREIGN KEY (organisation_id, case_id) REFERENCES treatment_case,
        FOREIGN KEY (organisation_id, lab_step_id) REFERENCES lab_step,
        FOREIGN KEY (organisation_id, recorded_by) REFERENCES user_account);
      CREATE INDEX material_lot_by_lot ON material_lot (organisation_id, lot);
      ${keepApart('material_lot')}`);
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query(`
      DROP TABLE material_lot; DROP TABLE disinfection_record; DROP TABLE parcel_object; DROP TABLE parcel;
      DROP TABLE custody_object`);
  }
}
