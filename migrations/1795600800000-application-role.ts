import type { MigrationInterface, QueryRunner } from 'typeorm';
import { APPLICATION_ROLE } from './row-security.js';

/**
 * The application's group role, and equality on uuid inside exclusion constraints.
 * Roles belong to the whole cluster: another database may use this one, so it is made only once and never dropped.
 */
export class ApplicationRole1795600800000 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query('CREATE EXTENSION IF NOT EXISTS btree_gist');
    await db.query(`
      DO $$ BEGIN
        CREATE ROLE ${APPLICATION_ROLE} NOLOGIN NOSUPERUSER NOCREATEDB NOCREATEROLE NOBYPASSRLS;
      EXCEPTION WHEN duplicate_object OR unique_violation THEN NULL;
      END $$`);
    await db.query(`GRANT USAGE ON SCHEMA public TO ${APPLICATION_ROLE}`);
    await db.query(`GRANT SELECT ON migrations TO ${APPLICATION_ROLE}`);
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query(`REVOKE SELECT ON migrations FROM ${APPLICATION_ROLE}`);
    await db.query(`REVOKE USAGE ON SCHEMA public FROM ${APPLICATION_ROLE}`);
    await db.query('DROP EXTENSION btree_gist');
  }
}
