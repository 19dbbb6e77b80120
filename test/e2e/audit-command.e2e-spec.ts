import { createDataSource, inOrganisation, listOrganisations, sealAudit } from '@archwright/records';
import pg from 'pg';
import { loadDemoPractice } from '../../apps/cli/src/demo-practice/load-demo.js';
import { createSuiteDatabase, type SuiteDatabase } from '../support/database.js';
import { runCommandLine } from '../support/service.js';

const NOW = new Date('2027-01-04T07:00:00Z');

let database: SuiteDatabase;
/** The demonstration's patients were entered by its front desk; those entries are sealed. */
beforeAll(async () => {
  database = await createSuiteDatabase();
  const db = await createDataSource({ url: database.url, applicationName: 'suite', connections: 2 }).initialize();
  await loadDemoPractice(db, NOW);
  for (const id of await listOrganisations(db)) await inOrganisation(db, id, (tx) => sealAudit(tx, NOW));
  await db.destroy();
}, 60_000);
afterAll(() => database.drop());

async function verify(): Promise<{ code: number | null; said: string }> {
  const run = runCommandLine(['audit', 'verify'], { DATABASE_URL: database.url });
  return { code: await run.ended, said: run.said() };
}

describe('cli audit verify', () => {
  it('says that an untouched trail holds, with its head', async () => {
    const { code, said } = await verify();
    expect(said).toMatch(
      /Quillon Example Practice: the chain holds, \d+ entries sealed, 0 waiting .* head [0-9a-f]{64}/,
    );
    expect(code).toBe(0);
  });

  it('names the entry of which somebody flipped one byte, and ends with 1', async () => {
    const admin = new pg.Client({ connectionString: database.adminUrl });
    await admin.connect();
    const { rows } = await admin.query<{ id: string }>(
      `UPDATE audit_entry SET action = 'Create-patient' WHERE id = (SELECT entry_id FROM audit_seal WHERE sequence = 3) RETURNING id`,
    );
    await admin.end();
    const { code, said } = await verify();
    expect(said).toContain(`BROKEN at entry 3 of the chain: ${rows[0]?.id ?? 'none'} was changed after it was sealed`);
    expect(code).toBe(1);
  });

  it('refuses what it does not know', async () => {
    const run = runCommandLine(['audit', 'forget']);
    expect(await run.ended).toBe(2);
    expect(run.said()).toContain('"forget" is not known');
  });
});
