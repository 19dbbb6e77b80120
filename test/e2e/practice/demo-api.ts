import { createLogger, parseConfiguration } from '@archwright/platform';
import { createDataSource } from '@archwright/records';
import type { DataSource } from 'typeorm';
import { createApi } from '../../../apps/api/src/create-api.js';
import { loadDemoPractice } from '../../../apps/cli/src/demo-practice/load-demo.js';
import { demoPassword } from '../../../apps/cli/src/demo/scenario.js';
import { createSuiteDatabase, type SuiteDatabase } from '../../support/database.js';

const SECRET = 'a-secret-of-the-tests-long-enough-for-it';

/** A Monday in winter, before anybody has opened. */
export const NOW = new Date('2027-01-04T07:00:00Z');

/** The demonstration practice behind a listening service whose clock starts at {@link NOW}. */
export interface DemoApi {
  readonly url: string;
  /** The application's own login, for looking at rows. */
  readonly db: DataSource;
  readonly database: SuiteDatabase;
  /** A front-desk, laboratory or other person of the scenario, signed in; answers the session cookie. */
  signIn(name: string): Promise<string>;
  close(): Promise<void>;
}

export async function openDemoApi(): Promise<DemoApi> {
  const database = await createSuiteDatabase();
  const db = await createDataSource({
    url: database.url,
    applicationName: 'practice-suite',
    connections: 3,
  }).initialize();
  await loadDemoPractice(db, NOW);
  const configuration = parseConfiguration({
    DATABASE_URL: database.url,
    SESSION_SECRET: SECRET,
    LOG_LEVEL: 'silent',
    ARCHWRIGHT_CLOCK: NOW.toISOString(),
  });
  const app = await createApi(configuration, createLogger('api', 'silent'));
  await app.listen(0, '127.0.0.1');
  const url = `${await app.getUrl()}/api/v1`;
  return {
    url,
    db,
    database,
    signIn: async (name) =>
      cookieOf(await postSession(url, { signInName: `${name}@example.test`, password: demoPassword })),
    close: async () => {
      await app.close();
      await db.destroy();
      await database.drop();
    },
  };
}

export function postSession(url: string, body: { signInName: string; password: string }): Promise<Response> {
  return fetch(`${url}/sessions`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });
}

/** The session cookie that an answer sets, as a browser sends it back. */
export function cookieOf(response: Response): string {
  const [cookie] = response.headers.getSetCookie();
  if (cookie === undefined) throw new Error(`The answer ${String(response.status)} sets no cookie.`);
  return cookie.split(';', 1)[0] ?? '';
}
