import { join } from 'node:path';
import { problem } from '@archwright/contracts';
import { freePort } from '../../../apps/cli/src/embedded-postgres/free-port.js';
import { demoPassword } from '../../../apps/cli/src/demo/scenario.js';
import { temporaryFolder } from '../../support/service.js';
import { ServiceProcess } from '../../support/service-process.js';
import { NOW, cookieOf, openDemoApi, postSession, type DemoApi } from './demo-api.js';

const folder = temporaryFolder();
let demo: DemoApi;
let processes: ServiceProcess[];
let urls: string[];

beforeAll(async () => {
  demo = await openDemoApi();
  const ports = [await freePort(), await freePort()];
  urls = ports.map((port) => `http://127.0.0.1:${String(port)}/api/v1`);
  processes = ports.map(
    (port) =>
      new ServiceProcess('api', {
        DATABASE_URL: demo.database.url,
        SESSION_SECRET: 'a-secret-of-the-tests-long-enough-for-it',
        // One clock for both: each would else begin to count at its own start.
        ARCHWRIGHT_CLOCK: NOW.toISOString(),
        ARCHWRIGHT_CLOCK_FILE: join(folder.path, 'clock'),
        PORT: String(port),
      }),
  );
  await Promise.all(processes.map((one) => one.start()));
}, 60_000);
afterAll(async () => {
  await Promise.all(processes.map((one) => one.stop()));
  await demo.close();
  folder.remove();
});
beforeEach(() => demo.db.query('DELETE FROM sign_in_attempt'));

/** Attempts go to one process and the other in turn. */
const attempt = (number: number, signInName: string, password: string) =>
  postSession(urls[number % urls.length] ?? '', { signInName, password });

describe('two API processes', () => {
  it('refuse the sixth attempt on one account, with the seconds to wait', async () => {
    const statuses: number[] = [];
    for (let number = 0; number < 5; number++) {
      statuses.push((await attempt(number, 'vale@example.test', 'guess')).status);
    }
    expect(statuses).toEqual([401, 401, 401, 401, 401]);
    const sixth = await attempt(5, 'vale@example.test', demoPassword);
    expect(sixth.status).toBe(429);
    const seconds = Number(sixth.headers.get('retry-after'));
    expect(seconds).toBeGreaterThan(14 * 60);
    expect(seconds).toBeLessThanOrEqual(15 * 60);
    expect(problem.parse(await sixth.json()).code).toBe('access.too-many');
  });

  it('refuse the sixth attempt from one address, whatever names it tries', async () => {
    const statuses: number[] = [];
    for (let number = 0; number < 5; number++) {
      statuses.push((await attempt(number, `nobody-${String(number)}@example.test`, 'guess')).status);
    }
    expect(statuses).toEqual([401, 401, 401, 401, 401]);
    expect((await attempt(5, 'manager@example.test', demoPassword)).status).toBe(429);
  });

  it('refuse the sixth guess at the present password of somebody who is signed in, at the door as well', async () => {
    const cookie = cookieOf(await attempt(0, 'bench@example.test', demoPassword));
    const change = (number: number, current: string) =>
      fetch(`${urls[number % urls.length] ?? ''}/sessions/current/password`, {
        method: 'PUT',
        headers: { cookie, 'content-type': 'application/json' },
        body: JSON.stringify({ current, next: 'a-password-of-their-own' }),
      });
    const statuses: number[] = [];
    for (let number = 0; number < 5; number++) statuses.push((await change(number, 'guess')).status);
    expect(statuses).toEqual([422, 422, 422, 422, 422]);
    const sixth = await change(5, demoPassword);
    expect([sixth.status, problem.parse(await sixth.json()).code]).toEqual([429, 'access.too-many']);
    expect((await attempt(6, 'bench@example.test', demoPassword)).status).toBe(429);
  });

  it('tell no more guesses that they are wrong when all come at once', async () => {
    const guesses = Array.from({ length: 40 }, (_, number) => attempt(number, 'chair@example.test', 'guess'));
    const statuses = (await Promise.all(guesses)).map(({ status }) => status);
    const told = statuses.filter((status) => status === 401).length;
    expect(told).toBeGreaterThan(0);
    // Account and address count apart: a guess may be the fifth of one and the sixth of the other.
    expect(told).toBeLessThanOrEqual(5);
    expect(statuses.filter((status) => status === 429)).toHaveLength(statuses.length - told);
  });
});
