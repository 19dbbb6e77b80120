import type { MigrationInterface, QueryRunner } from 'typeorm';

const STATES = `'expected', 'in-use', 'in-transit', 'quarantined', 'given-to-patient', 'discarded', 'lost'`;
const FINDINGS = `'present', 'missing', 'unexpected', 'damaged'`;

/**
 * An object lies packed before it travels, and knows when it last arrived, so that each dispatch needs a declaration of
 * disinfection of its own. What arrives without one can be said. Disinfection may be declared of an object that no stage
 * made, such as an old denture. A planned run may be dropped while a parcel waits for it.
 */
export class CustodyDeclarations1795605000000 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      ALTER TABLE custody_object
        DROP CONSTRAINT custody_object_state_check,
        ADD CONSTRAINT custody_object_state_check CHECK (state IN (${STATES}, 'packed')),
        ADD COLUMN arrived_at timestamptz;
      CREATE INDEX custody_object_set_aside ON custody_object (organisation_id, id) WHERE state = 'quarantined';
      ALTER TABLE parcel
        DROP CONSTRAINT parcel_organisation_id_courier_leg_id_fkey,
        ADD CONSTRAINT parcel_courier_leg FOREIGN KEY (organisation_id, courier_leg_id) REFERENCES courier_leg
          ON DELETE SET NULL (courier_leg_id),
        ADD COLUMN handed_over_by uuid,
        ADD COLUMN carrier text,
        ADD FOREIGN KEY (organisation_id, handed_over_by) REFERENCES user_account;
      CREATE INDEX parcel_on_its_way ON parcel (organisation_id, id) WHERE state <> 'reconciled';
      ALTER TABLE parcel_object
        DROP CONSTRAINT parcel_object_found_check,
        ADD CONSTRAINT parcel_object_found_check CHECK (found IN (${FINDINGS}, 'undeclared')),
        ADD COLUMN note text;
      CREATE INDEX parcel_object_by_object ON parcel_object (organisation_id, object_id);
      ALTER TABLE disinfection_record
        ALTER COLUMN stage_id DROP NOT NULL,
        ADD COLUMN method text,
        ADD CONSTRAINT disinfection_record_names_what CHECK (num_nonnulls(stage_id, object_id) > 0);
      CREATE INDEX disinfection_record_by_object ON disinfection_record (organisation_id, object_id)`);
  }

  /** What only the newer schema can say is told in the nearest older words. The walls stand aside for that moment. */
  async down(db: QueryRunner): Promise<void> {
    for (const table of ['custody_object', 'parcel_object', 'disinfection_record'])
      await db.query(`ALTER TABLE ${table} NO FORCE ROW LEVEL SECURITY`);
    await db.query(`
      UPDATE custody_object SET state = 'in-use' WHERE state = 'packed';
      UPDATE parcel_object SET found = 'damaged' WHERE found = 'undeclared';
      DELETE FROM disinfection_record WHERE stage_id IS NULL`);
    await db.query(`
      DROP INDEX disinfection_record_by_object;
      ALTER TABLE disinfection_record
        DROP CONSTRAINT disinfection_record_names_what, DROP COLUMN method, ALTER COLUMN stage_id SET NOT NULL;
      DROP INDEX parcel_object_by_object;
      ALTER TABLE parcel_object
        DROP CONSTRAINT parcel_object_found_check, DROP COLUMN note,
        ADD CONSTRAINT parcel_object_found_check CHECK (found IN (${FINDINGS}));
      DROP INDEX parcel_on_its_way;
      ALTER TABLE parcel
        DROP COLUMN handed_over_by, DROP COLUMN carrier, DROP CONSTRAINT parcel_courier_leg,
        ADD FOREIGN KEY (organisation_id, courier_leg_id) REFERENCES courier_leg;
      DROP INDEX custody_object_set_aside;
      ALTER TABLE custody_object
        DROP CONSTRAINT custody_object_state_check, DROP COLUMN arrived_at,
        ADD CONSTRAINT custody_object_state_check CHECK (state IN (${STATES}))`);
    for (const table of ['custody_object', 'parcel_object', 'disinfection_record'])
      await db.query(`ALTER TABLE ${table} FORCE ROW LEVEL SECURITY`);
  }
}
