import type { MigrationInterface, QueryRunner } from 'typeorm';
import { TENANT_KEY, keepApart } from './row-security.js';

/**
 * A patient's name from each of its words on ("mole ada", "ada mole"), so that any word of it can be typed first; and the
 * birth date as a way to a patient. Keys are compared by `>=` and `<` in byte order, since LIKE can't be an index
 * condition under row-level security. Names that are there already get theirs from `search_key`, which is folded.
 */
export class PatientNameKeys1795604940000 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      CREATE TABLE patient_name_key (${TENANT_KEY},
        patient_id uuid NOT NULL,
        search_key text COLLATE "C" NOT NULL,
        FOREIGN KEY (organisation_id, patient_id)
          REFERENCES patient_identity (organisation_id, patient_id) ON DELETE CASCADE,
        CONSTRAINT patient_name_key_once UNIQUE (organisation_id, patient_id, search_key));
      CREATE INDEX patient_name_key_by_search_key ON patient_name_key (organisation_id, search_key, patient_id);
      INSERT INTO patient_name_key (organisation_id, id, patient_id, search_key)
        SELECT i.organisation_id, gen_random_uuid(), i.patient_id, k.key
        FROM patient_identity i CROSS JOIN LATERAL (
          SELECT DISTINCT btrim(substr(i.search_key, n) || ' ' || left(i.search_key, n - 1)) AS key
          FROM generate_series(1, length(i.search_key)) n
          WHERE n = 1 OR substr(i.search_key, n - 1, 1) IN (' ', '-')) k;
      ${keepApart('patient_name_key')}
      CREATE INDEX patient_identity_by_birth ON patient_identity (organisation_id, birth_on)`);
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query('DROP INDEX patient_identity_by_birth; DROP TABLE patient_name_key');
  }
}
