import { randomBytes } from 'node:crypto';
import pg from 'pg';

/** A database of one suite, with the schema of the migrations and no rows. */
export interface SuiteDatabase {
  /** The application's login: owns nothing, bound by row-level security. */
  readonly url: string;
  /** The provisioning login in the same database; for looking behind the walls, never for the code under test. */
  readonly adminUrl: string;
  drop(): Promise<void>;
}

/** Clones the migrated template; the test command starts the server and names it in the environment. */
export async function createSuiteDatabase(): Promise<SuiteDatabase> {
  const adminUrl = given('TEST_DATABASE_ADMIN_URL');
  const template = new URL(given('TEST_DATABASE_URL'));
  const name = `suite_${randomBytes(6).toString('hex')}`;
  await administer(adminUrl, `CREATE DATABASE ${name} TEMPLATE ${template.pathname.slice(1)}`);
  return {
    url: named(template.href, name),
    adminUrl: named(adminUrl, name),
    drop: () => administer(adminUrl, `DROP DATABASE IF EXISTS ${name} WITH (FORCE)`),
  };
}

function given(variable: string): string {
  const value = process.env[variable];
  if (value === undefined) throw new Error(`${variable} is not set. Run this suite by "npm test -- --only e2e".`);
  return value;
}

function named(url: string, database: string): string {
  const other = new URL(url);
  other.pathname = `/${database}`;
  return other.href;
}

async function administer(url: string, statement: string): Promise<void> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    await client.query(statement);
  } finally {
    await client.end();
  }
}
