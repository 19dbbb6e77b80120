import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * Where a case's visits are made. How to get in (a key, a ward) is contact data: it moves to the patient's identity, so
 * that erasing the identity erases it.
 */
export class VisitsAtHome1795601905000 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      ALTER TABLE treatment_case
        ADD COLUMN visit_place text NOT NULL DEFAULT 'clinic' CHECK (visit_place IN ('clinic', 'home', 'care-home')),
        ADD COLUMN home_travel_minutes integer CHECK (home_travel_minutes >= 0),
        ADD CONSTRAINT treatment_case_way_to_home CHECK ((visit_place = 'clinic') = (home_travel_minutes IS NULL));
      ALTER TABLE home_visit DROP COLUMN access_note;
      ALTER TABLE patient_identity ADD COLUMN access_note text`);
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query(`
      ALTER TABLE patient_identity DROP COLUMN access_note;
      ALTER TABLE home_visit ADD COLUMN access_note text;
      ALTER TABLE treatment_case DROP CONSTRAINT treatment_case_way_to_home,
        DROP COLUMN visit_place, DROP COLUMN home_travel_minutes`);
  }
}
