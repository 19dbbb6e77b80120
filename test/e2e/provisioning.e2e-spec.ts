import pg from 'pg';
import { requireHarmlessLogin, DatabaseLoginRefusedError } from '@archwright/platform';
import { createSuiteDatabase, type SuiteDatabase } from '../support/database.js';

describe('a provisioned database', () => {
  let database: SuiteDatabase;
  beforeAll(async () => {
    database = await createSuiteDatabase();
  });
  afterAll(() => database.drop());

  async function withLogin<T>(url: string, work: (client: pg.Client) => Promise<T>): Promise<T> {
    const client = new pg.Client({ connectionString: url });
    await client.connect();
    try {
      return await work(client);
    } finally {
      await client.end();
    }
  }
  const check = (url: string) =>
    withLogin(url, (client) =>
      requireHarmlessLogin(async (sql) => (await client.query<Record<string, unknown>>(sql)).rows),
    );

  it('lets the service start with a login that owns nothing', async () => {
    await expect(check(database.url)).resolves.toBeUndefined();
  });

  it('refuses to start with the provisioning login, and says why', async () => {
    await expect(check(database.adminUrl)).rejects.toThrow(DatabaseLoginRefusedError);
    await expect(check(database.adminUrl)).rejects.toThrow(/is SUPERUSER and has BYPASSRLS and owns/);
  });

  it('refuses a login that owns a single table', async () => {
    const owner = new URL(database.url);
    owner.username = 'archwright_owner';
    owner.password = 'owner';
    await withLogin(database.adminUrl, async (admin) => {
      await admin.query(`CREATE ROLE archwright_owner LOGIN PASSWORD 'owner'`);
      await admin.query('CREATE TABLE owned ()');
      await admin.query('ALTER TABLE owned OWNER TO archwright_owner');
    });
    try {
      await expect(check(owner.href)).rejects.toThrow(/owns the database or a table in it/);
    } finally {
      await withLogin(database.adminUrl, (admin) =>
        admin.query('DROP OWNED BY archwright_owner; DROP ROLE archwright_owner'),
      );
    }
  });

  it('keeps the service from making tables, also in the schema of the queue', async () => {
    await withLogin(database.url, async (client) => {
      await expect(client.query('CREATE TABLE mine ()')).rejects.toMatchObject({ code: '42501' });
      await expect(client.query('CREATE TABLE bullmq.mine ()')).rejects.toMatchObject({ code: '42501' });
    });
  });
});
