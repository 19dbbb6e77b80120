import { problem, sessionView } from '@archwright/contracts';
import { demoPassword } from '../../../apps/cli/src/demo/scenario.js';
import { cookieOf, openDemoApi, postSession, type DemoApi } from './demo-api.js';

let api: DemoApi;
beforeAll(async () => {
  api = await openDemoApi();
}, 60_000);
afterAll(() => api.close());

const current = (cookie: string, method = 'GET') =>
  fetch(`${api.url}/sessions/current`, { method, headers: { cookie } });

/** Failures are counted by address as well, so each example begins with none. */
beforeEach(() => api.db.query('DELETE FROM sign_in_attempt'));

describe('signing in', () => {
  it('greets the person, and keeps the cookie from scripts and other sites', async () => {
    const answer = await postSession(api.url, { signInName: 'Desk@Example.test', password: demoPassword });
    expect(answer.ok).toBe(true);
    expect(sessionView.parse(await answer.json())).toMatchObject({ role: 'front-desk', name: 'Robin Desk-Example' });
    const cookie = answer.headers.getSetCookie().join();
    expect(cookie).toMatch(/HttpOnly/i);
    expect(cookie).toMatch(/SameSite=Strict/i);
    expect((await current(cookieOf(answer))).status).toBe(200);
  });

  it('stores no token that a reader of the database could use', async () => {
    const token = (await api.signIn('manager')).split('.')[1] ?? '';
    const rows: { session: string }[] = await api.db.transaction(async (tx) => {
      const [{ organisation_id: id }]: [{ organisation_id: string }] = await tx.query(
        `SELECT organisation_id FROM directory WHERE sign_in_name = 'manager@example.test'`,
      );
      await tx.query(`SELECT set_config('app.organisation_id', $1, true)`, [id]);
      return tx.query('SELECT session::text FROM session');
    });
    expect(rows.length).toBeGreaterThan(0);
    expect(rows.some(({ session }) => session.includes(token))).toBe(false);
  });

  it('refuses a wrong password and an unknown name in the same words', async () => {
    const wrong = await postSession(api.url, { signInName: 'desk@example.test', password: 'not-the-password' });
    const unknown = await postSession(api.url, { signInName: 'nobody@example.test', password: demoPassword });
    expect([wrong.status, unknown.status]).toEqual([401, 401]);
    expect(wrong.headers.getSetCookie()).toEqual([]);
    const [one, other] = [problem.parse(await wrong.json()), problem.parse(await unknown.json())];
    expect(one.detail).toBe(other.detail);
  });

  it('closes a name after five failures, even to the right password, and says until when', async () => {
    const attempt = (password: string) => postSession(api.url, { signInName: 'vale@example.test', password });
    const statuses: number[] = [];
    for (let failure = 0; failure < 5; failure++) statuses.push((await attempt('guess')).status);
    expect(statuses).toEqual([401, 401, 401, 401, 401]);
    const sixth = await attempt(demoPassword);
    expect(sixth.status).toBe(429);
    expect(problem.parse(await sixth.json()).detail).toMatch(/2027-01-04T07:1\d/);
  });

  it('forgets the failures of a person who then gets it right', async () => {
    const attempt = (password: string) => postSession(api.url, { signInName: 'admin@example.test', password });
    for (let failure = 0; failure < 4; failure++) await attempt('guess');
    expect((await attempt(demoPassword)).ok).toBe(true);
    for (let failure = 0; failure < 4; failure++) await attempt('guess');
    expect((await attempt(demoPassword)).ok).toBe(true);
  });
});

describe('a session', () => {
  it('is over when it is ended, also for whoever kept the cookie', async () => {
    const cookie = await api.signIn('bench');
    expect((await current(cookie)).status).toBe(200);
    const ended = await current(cookie, 'DELETE');
    expect(ended.status).toBe(204);
    expect((await current(cookie)).status).toBe(401);
  });

  it('is wanted by every other route', async () => {
    for (const path of ['/practice', '/sessions/current']) {
      expect((await fetch(`${api.url}${path}`)).status).toBe(401);
    }
    const forged = (await api.signIn('desk')).replace(/.$/, (last) => (last === 'A' ? 'B' : 'A'));
    expect((await current(forged)).status).toBe(401);
  });
});
