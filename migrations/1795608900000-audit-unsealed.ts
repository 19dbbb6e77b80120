import type { MigrationInterface, QueryRunner } from 'typeorm';
import { TENANT_KEY, keepApart } from './row-security.js';

/**
 * Entries that wait for their seal, so that the sealer needs not look for them among all. A trigger notes each in the
 * transaction that writes it; the sealer takes it out. Verifying counts unsealed entries without this table.
 */
export class AuditUnsealed1795608900000 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      CREATE TABLE audit_unsealed (${TENANT_KEY},
        FOREIGN KEY (organisation_id, id) REFERENCES audit_entry);
      INSERT INTO audit_unsealed (organisation_id, id)
        SELECT organisation_id, id FROM audit_entry e WHERE NOT EXISTS (
          SELECT FROM audit_seal s WHERE s.organisation_id = e.organisation_id AND s.entry_id = e.id);
      ${keepApart('audit_unsealed', 'SELECT, INSERT, DELETE')}
      CREATE FUNCTION note_unsealed() RETURNS trigger LANGUAGE plpgsql AS $$
        BEGIN
          INSERT INTO audit_unsealed (organisation_id, id) SELECT organisation_id, id FROM written;
          RETURN NULL;
        END $$;
      CREATE TRIGGER audit_entry_unsealed AFTER INSERT ON audit_entry
        REFERENCING NEW TABLE AS written FOR EACH STATEMENT EXECUTE FUNCTION note_unsealed()`);
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query(`
      DROP TRIGGER audit_entry_unsealed ON audit_entry; DROP FUNCTION note_unsealed(); DROP TABLE audit_unsealed`);
  }
}
