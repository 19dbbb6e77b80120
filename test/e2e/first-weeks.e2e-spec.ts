import { casePage, caseView, demoClock } from '@archwright/contracts';
import { Cast } from '../../apps/cli/src/demo/cast.js';
import { createSuiteDatabase } from '../support/database.js';
import { startService, temporaryFolder } from '../support/service.js';

/** A Wednesday in the middle of the morning. */
const NOW = '2027-01-20T10:00:00Z';

describe('the demonstration, when it is first started', () => {
  const folder = temporaryFolder();
  afterAll(() => {
    folder.remove();
  });

  it('has cases under way at every workplace, once, and shows the present', async () => {
    const database = await createSuiteDatabase();
    const env = { DATABASE_URL: database.url, DATABASE_ADMIN_URL: '', QUEUE_URL: '', ARCHWRIGHT_CLOCK: NOW };
    const service = await startService(folder.path, [], env);
    const cast = new Cast(service.url);
    await cast.signIn();
    expect(service.said()).not.toContain('not where they should be');
    const { now } = await cast.desk.call({ method: 'GET', path: '/demo/clock', answer: demoClock });
    expect(Date.parse(now) - Date.parse(NOW)).toBeGreaterThanOrEqual(0);
    const { items } = await cast.desk.call({ method: 'GET', path: '/cases', answer: casePage });
    const cases = await Promise.all(
      items.map(({ id }) => cast.desk.call({ method: 'GET', path: `/cases/${id}`, answer: caseView })),
    );
    expect(cases).toHaveLength(6);
    const due = cases.flatMap(({ stages, labSteps }) => [
      ...stages.filter(({ startsAt, state }) => startsAt !== null && startsAt < NOW && state !== 'passed'),
      ...labSteps.filter(({ endsAt, state }) => endsAt !== null && endsAt < NOW && state !== 'finished'),
    ]);
    expect(due).toEqual([]);
    expect(cases.filter(({ stages }) => stages.some(({ state }) => state === 'passed')).length).toBeGreaterThan(3);
    expect(cases.every(({ stages }) => stages.some(({ startsAt }) => startsAt !== null && startsAt > NOW))).toBe(true);

    await service.stop();
    const again = await startService(folder.path, [], env);
    expect(again.said()).not.toContain('first cases');
    await again.stop();
    await database.drop();
  }, 240_000);
});
