import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { casePage, caseView, demoClock } from '@archwright/contracts';
import { Cast } from '../../apps/cli/src/demo/cast.js';
import { createSuiteDatabase } from '../support/database.js';
import { runCommandLine, startService, temporaryFolder } from '../support/service.js';
import { until } from '../support/until.js';

/** A Wednesday in the middle of the morning. */
const NOW = '2027-01-20T10:00:00Z';
const DAY_MS = 86_400_000;

/** Six cases, nothing of them overdue, work done in most and visits ahead in all, and the clock at the present. */
async function requireUnderWay(url: string): Promise<void> {
  const cast = new Cast(url);
  await cast.signIn();
  const { now } = await cast.desk.call({ method: 'GET', path: '/demo/clock', answer: demoClock });
  expect(Date.parse(now) - Date.parse(NOW)).toBeGreaterThanOrEqual(0);
  const { items } = await cast.desk.call({ method: 'GET', path: '/cases', answer: casePage });
  const cases = await Promise.all(
    items.map(({ id }) => cast.desk.call({ method: 'GET', path: `/cases/${id}`, answer: caseView })),
  );
  expect(cases).toHaveLength(6);
  const due = cases.flatMap(({ stages, labSteps }) => [
    ...stages.filter(({ startsAt, state }) => startsAt !== null && startsAt < NOW && state !== 'passed'),
    ...stages.filter(({ appointmentState }) => appointmentState === 'in-progress'),
    ...labSteps.filter(({ endsAt, state }) => endsAt !== null && endsAt < NOW && state !== 'finished'),
  ]);
  expect(due).toEqual([]);
  expect(cases.filter(({ stages }) => stages.some(({ state }) => state === 'passed')).length).toBeGreaterThan(3);
  expect(cases.every(({ stages }) => stages.some(({ startsAt }) => startsAt !== null && startsAt > NOW))).toBe(true);
}

describe('the demonstration, when it is first started', () => {
  it('has cases under way at every workplace, once, and shows the present', async () => {
    const folder = temporaryFolder();
    const database = await createSuiteDatabase();
    const env = { DATABASE_URL: database.url, DATABASE_ADMIN_URL: '', QUEUE_URL: '', ARCHWRIGHT_CLOCK: NOW };
    const service = await startService(folder.path, [], env);
    expect(service.said()).not.toContain('not where they should be');
    await requireUnderWay(service.url);
    await service.stop();
    const again = await startService(folder.path, [], env);
    expect(again.said()).not.toContain('first cases');
    expect(again.said()).toContain('It was there already');
    await again.stop();
    await database.drop();
    folder.remove();
  }, 240_000);

  it('ends quietly when it is stopped in the middle of that, and goes on with the next start', async () => {
    const folder = temporaryFolder();
    const database = await createSuiteDatabase();
    const env = { DATABASE_URL: database.url, DATABASE_ADMIN_URL: '', QUEUE_URL: '', ARCHWRIGHT_CLOCK: NOW };
    const clock = join(folder.path, 'clock');
    const behindMs = () => Date.parse(NOW) - Date.now() - (existsSync(clock) ? Number(readFileSync(clock, 'utf8')) : 0);
    const first = runCommandLine(['start', '--port', '0', '--data', folder.path], env);
    // Some cases are booked by then, and some visits are over.
    await until(() => existsSync(clock) && behindMs() < 8 * DAY_MS, 180_000);
    first.child.kill('SIGINT');
    expect(await first.ended).toBe(0);
    expect(first.said()).not.toMatch(/not where they should be|is ready at/);
    expect(behindMs()).toBeGreaterThan(DAY_MS);

    const second = await startService(folder.path, [], env);
    expect(second.said()).toContain('Treating the first cases');
    expect(second.said()).not.toContain('not where they should be');
    await requireUnderWay(second.url);
    await second.stop();
    await database.drop();
    folder.remove();
  }, 360_000);
});
