import pg from 'pg';
import type { SuiteDatabase } from './database.js';

/** Tables whose rows change by looking, not by what a suite does. */
const APART = ['session', 'sign_in_attempt'];

/**
 * Every row of every organisation, table by table, in a fixed order and as text; the row version counts, so that a row
 * that was written anew with the same values differs. Read from behind the walls.
 */
export async function everyRow({ adminUrl }: Pick<SuiteDatabase, 'adminUrl'>): Promise<Record<string, string[]>> {
  const client = new pg.Client({ connectionString: adminUrl });
  await client.connect();
  try {
    const tables = await client.query<{ name: string }>(
      `SELECT tablename AS name FROM pg_tables WHERE schemaname = 'public' AND tablename <> ALL ($1) ORDER BY tablename`,
      [APART],
    );
    const all: Record<string, string[]> = {};
    for (const { name } of tables.rows) {
      const rows = await client.query<{ row: string }>(
        `SELECT t.xmin::text || ' ' || t::text AS row FROM ${client.escapeIdentifier(name)} t ORDER BY 1`,
      );
      all[name] = rows.rows.map(({ row }) => row);
    }
    return all;
  } finally {
    await client.end();
  }
}
