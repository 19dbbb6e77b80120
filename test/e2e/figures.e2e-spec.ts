import { figuresView, type CaseView } from '@archwright/contracts';
import { Appointment, Stage } from '@archwright/records';
import { Person, booked, caseOf, openTwoPractices, type TwoPractices } from './cases-client.js';

const DAY_MS = 86_400_000;

let two: TwoPractices;
let manager: Person;
beforeAll(async () => {
  two = await openTwoPractices();
  manager = new Person(two.api.url, await two.api.signIn('manager'));
}, 90_000);
afterAll(() => two.close());

/** Lets every visit of a case have taken place as booked, the placement some days later. */
async function place(view: CaseView, daysLate: number): Promise<void> {
  await two.rows(async (tx) => {
    for (const { id, appointmentId, endsAt, isDelivery } of view.stages) {
      if (appointmentId === null || endsAt === null) continue;
      const completedAt = new Date(Date.parse(endsAt) + (isDelivery ? daysLate * DAY_MS : 0));
      await tx.update(Stage, { id }, { state: 'passed', completedAt });
      await tx.update(Appointment, { id: appointmentId }, { state: 'completed' });
    }
  });
}

const relined = async () => booked(two.desk, (await caseOf(two.desk, {}, 'reline')).id);

it('says how little there is before anything was placed, and the use of what is open', async () => {
  const { shares, values, use } = await manager.get('GET /figures', figuresView);
  expect([...shares, ...values].map(({ standing, centre, points }) => [standing.kind, centre, points])).toEqual(
    Array.from({ length: 5 }, () => ['too-few', null, []]),
  );
  expect(new Set(use.rows.map(({ kind }) => kind))).toEqual(new Set(['chair', 'clinician', 'work-centre']));
  expect(use.rows.find(({ kind }) => kind === 'chair')?.openMinutes).toBeGreaterThan(0);
});

it('counts promises kept, days, visits and missed visits of what took place', async () => {
  const [kept, late] = [await relined(), await relined()];
  await place(kept, 0);
  await place(late, 3);
  const missed = late.stages.find(
    ({ isDelivery, appointmentId }) => !isDelivery && appointmentId !== null,
  )?.appointmentId;
  await two.rows((tx) => tx.update(Appointment, { id: missed ?? '' }, { state: 'missed' }));

  const { shares, values } = await manager.get('GET /figures', figuresView);
  const sums = shares.map(({ key, points }) => [
    key,
    points.reduce((sum, { events }) => sum + events, 0),
    points.reduce((sum, { size }) => sum + size, 0),
  ]);
  const visits = new Set(
    [kept, late].flatMap(({ stages }) => stages.flatMap(({ appointmentId }) => appointmentId ?? [])),
  );
  expect(sums).toEqual([
    ['promise-kept', 1, 2],
    ['remake', 0, 2],
    ['missed-visit', 1, visits.size],
  ]);
  const [leadTime] = values;
  expect(leadTime?.points.map(({ caseNumber }) => caseNumber).sort()).toEqual([kept.number, late.number].sort());
  expect(leadTime?.points.every(({ value }) => value > 0)).toBe(true);
});
