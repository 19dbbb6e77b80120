import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * Reasons of a plan, and what it gives up, are kept by code; they were English sentences. Those of plans made before are
 * left out: a plan is booked by its visits and times, which stay as they are.
 */
export class ReasonsByCode1795615000066 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await withoutReasons(db);
  }

  async down(db: QueryRunner): Promise<void> {
    await withoutReasons(db);
  }
}

/** The walls stand aside for that moment: the rows are every organisation's. */
async function withoutReasons(db: QueryRunner): Promise<void> {
  const tables = ['plan', 'replan_proposal', 'disturbance_proposal'];
  for (const table of tables) await db.query(`ALTER TABLE ${table} NO FORCE ROW LEVEL SECURITY`);
  await db.query(`
    UPDATE plan SET document = jsonb_set(document, '{plan}', document -> 'plan' || '{"reasons": [], "givesUp": []}')`);
  for (const table of tables.slice(1)) {
    await db.query(`
      UPDATE ${table} SET ripples = (
        SELECT jsonb_agg(jsonb_set(each, '{plan}', each -> 'plan' || jsonb_build_object(
            'reasons', '[]'::jsonb, 'givesUp', '[]'::jsonb,
            'visits', (SELECT coalesce(jsonb_agg(visit || '{"againstWishes": []}'), '[]')
                       FROM jsonb_array_elements(each -> 'plan' -> 'visits') AS visit))) ORDER BY position)
        FROM jsonb_array_elements(ripples) WITH ORDINALITY AS list (each, position))
      WHERE ripples <> '[]'`);
  }
  for (const table of tables) await db.query(`ALTER TABLE ${table} FORCE ROW LEVEL SECURITY`);
}
