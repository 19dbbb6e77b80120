import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import { problem } from '@archwright/contracts';
import { createLogger, parseConfiguration } from '@archwright/platform';
import pg from 'pg';
import { createApi } from '../../apps/api/src/create-api.js';
import { createSuiteDatabase, type SuiteDatabase } from '../support/database.js';

const SECRET = 'a-secret-of-the-tests-long-enough-for-it';

describe('the HTTP service', () => {
  let database: SuiteDatabase;
  let app: NestFastifyApplication;
  const configurationWith = (url: string) =>
    parseConfiguration({ DATABASE_URL: url, SESSION_SECRET: SECRET, LOG_LEVEL: 'silent' });

  beforeAll(async () => {
    database = await createSuiteDatabase();
    app = await createApi(configurationWith(database.url), createLogger('api', 'silent'));
  });
  afterAll(async () => {
    await app.close();
    await database.drop();
  });

  it('refuses to start with a login that row-level security does not bind', async () => {
    const starting = createApi(configurationWith(database.adminUrl), createLogger('api', 'silent'));
    await expect(starting).rejects.toMatchObject({ code: 'platform.database-login-refused' });
  });

  it('says that it lives and that it is ready', async () => {
    expect((await app.inject('/health/live')).json()).toEqual({ status: 'live' });
    expect((await app.inject('/health/ready')).json()).toEqual({ status: 'ready' });
  });

  it('lives but is not ready when a migration is missing', async () => {
    const admin = new pg.Client({ connectionString: database.adminUrl });
    await admin.connect();
    const { rows } = await admin.query<{ id: number; timestamp: string; name: string }>(
      'DELETE FROM migrations WHERE id = (SELECT max(id) FROM migrations) RETURNING *',
    );
    try {
      const ready = await app.inject('/health/ready');
      expect(ready.statusCode).toBe(503);
      expect(problem.parse(ready.json()).detail).toContain('1 migrations have not run');
      expect((await app.inject('/health/live')).statusCode).toBe(200);
    } finally {
      for (const { id, timestamp, name } of rows) {
        await admin.query('INSERT INTO migrations (id, timestamp, name) VALUES ($1, $2, $3)', [id, timestamp, name]);
      }
      await admin.end();
    }
  });

  it('answers an unknown address as a problem document with the request id', async () => {
    const answer = await app.inject('/api/v1/no-such-thing');
    expect(answer.statusCode).toBe(404);
    expect(answer.headers['content-type']).toContain('application/problem+json');
    expect(problem.parse(answer.json()).requestId).toBe(answer.headers['x-request-id']);
  });

  it('answers a body that is no JSON as a problem document', async () => {
    const answer = await app.inject({
      method: 'POST',
      url: '/api/v1/anything',
      headers: { 'content-type': 'application/json' },
      payload: '{"name": ',
    });
    expect(answer.statusCode).toBe(400);
    expect(problem.parse(answer.json()).status).toBe(400);
  });

  it('lets a page load scripts from this service only, and nobody frame it', async () => {
    const policy = String((await app.inject('/health/live')).headers['content-security-policy']);
    expect(policy).toContain("default-src 'self'");
    expect(policy).toContain("frame-ancestors 'none'");
    expect(policy).not.toMatch(/script-src[^;]*unsafe/);
  });

  it('describes itself in OpenAPI 3.1', async () => {
    const description = (await app.inject('/api/openapi.json')).json<{
      openapi: string;
      paths: Record<string, unknown>;
    }>();
    expect(description.openapi).toBe('3.1.0');
    expect(Object.keys(description.paths)).toContain('/health/ready');
  });
});
