import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Some published ranges differ between women and men. Kept with who a patient is, and erased with it. */
export class PatientSex1795615000033 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`ALTER TABLE patient_identity ADD COLUMN sex text CHECK (sex IN ('female', 'male'))`);
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query('ALTER TABLE patient_identity DROP COLUMN sex');
  }
}
