import type { MigrationInterface, QueryRunner } from 'typeorm';
import { APPLICATION_ROLE, keepApart } from './row-security.js';

/**
 * The tenant, and the directory that finds it: sign-in names before anyone is signed in, and the list of organisations
 * for background sweeps. The directory stands outside row-level security by design and holds nothing else.
 */
export class Organisation1795600860000 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      CREATE TABLE organisation (
        id uuid PRIMARY KEY,
        name text NOT NULL CHECK (name <> ''),
        kind text NOT NULL CHECK (kind IN ('practice', 'laboratory')),
        locale text NOT NULL,
        settings jsonb NOT NULL,
        version integer NOT NULL DEFAULT 1,
        created_at timestamptz NOT NULL DEFAULT now());
      ${keepApart('organisation', 'SELECT, INSERT, UPDATE', 'id')}

      CREATE TABLE directory (
        id uuid PRIMARY KEY,
        kind text NOT NULL CHECK (kind IN ('organisation', 'sign-in')),
        organisation_id uuid NOT NULL REFERENCES organisation (id),
        sign_in_name text COLLATE "C",
        user_id uuid,
        CONSTRAINT directory_sign_in_complete CHECK (num_nonnulls(sign_in_name, user_id) = CASE kind WHEN 'sign-in' THEN 2 ELSE 0 END),
        CONSTRAINT directory_sign_in_name_lower_case CHECK (sign_in_name = lower(sign_in_name)));
      CREATE UNIQUE INDEX directory_sign_in_name_once ON directory (sign_in_name);
      CREATE UNIQUE INDEX directory_organisation_once ON directory (organisation_id) WHERE kind = 'organisation';
      GRANT SELECT, INSERT, DELETE ON directory TO ${APPLICATION_ROLE};`);
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query('DROP TABLE directory; DROP TABLE organisation');
  }
}
