import { Searches, runWorkload } from '@archwright/casework';
import { loadView, workloadRun, workloadView, type CaseView, type WorkloadRunView } from '@archwright/contracts';
import { LabStep, Occupancy, WorkloadProposal, WorkloadRun, claim, createDataSource } from '@archwright/records';
import type { DataSource } from 'typeorm';
import type { ApiSession } from '../../apps/cli/src/demo/api-session.js';
import { NOW, bookedCase, found, openBookingPractice, overlaps, type BookingPractice } from './booking-practice.js';
import { refusal } from './capture-chairside.js';

const LONG_MS = 240_000;
const DAY_MS = 86_400_000;

/** Better plans of a laboratory's work, asked for and accepted over HTTP; the search runs as the worker runs it. */
describe('the workload of a laboratory', () => {
  let practice: BookingPractice;
  let db: DataSource;
  let searches: Searches;
  let bench: ApiSession;
  let laboratoryId: string;
  let booked: CaseView;

  beforeAll(async () => {
    practice = await openBookingPractice();
    db = await createDataSource({ url: practice.databaseUrl, applicationName: 'suite', connections: 4 }).initialize();
    searches = new Searches();
    bench = await practice.signIn('bench');
    booked = await bookedCase(practice);
    await bookedCase(practice);
    laboratoryId = found((await stepOf('trays')).laboratoryId);
  }, LONG_MS);
  afterAll(async () => {
    await searches.close();
    await db.destroy();
    await practice.close();
  });

  const stepOf = (code: string): Promise<LabStep> =>
    practice.rows(async (tx) => found((await tx.findBy(LabStep, { caseId: booked.id, code }))[0]));
  const allSteps = () => practice.rows((tx) => tx.find(LabStep, { order: { id: 'ASC' } }));
  const view = async (): Promise<WorkloadRunView> =>
    found(
      (await bench.call({ method: 'GET', path: `/lab/workload?laboratoryId=${laboratoryId}`, answer: workloadView }))
        .run,
    );
  const ask = (seconds = 2): Promise<WorkloadRunView> =>
    bench.call({ method: 'POST', path: '/lab/workload/runs', body: { laboratoryId, seconds }, answer: workloadRun });
  const cancel = ({ id, version }: WorkloadRunView): Promise<WorkloadRunView> =>
    bench.call({ method: 'POST', path: `/lab/workload/runs/${id}/cancel`, version, answer: workloadRun });
  const accept = ({ id, version }: { id: string; version: number }): Promise<WorkloadRunView> =>
    bench.call({ method: 'POST', path: `/lab/workload/proposals/${id}/accept`, version, answer: workloadRun });
  const run = (runId: string): Promise<void> =>
    runWorkload({ db, searches }, { organisationId: practice.organisationId, runId }, { now: () => NOW });
  const searched = async (): Promise<WorkloadRunView> => {
    const { id } = await ask();
    await run(id);
    return view();
  };

  /** Puts a step so many days later as if somebody had planned it badly: it misses its visit. */
  async function planTooLate(code: string): Promise<LabStep> {
    const step = await stepOf(code);
    const startMs = found(step.startsAt).getTime();
    const visit = found(booked.stages.find((stage) => stage.code === step.beforeStage)?.startsAt);
    let days = Math.ceil((Date.parse(visit) - startMs) / DAY_MS);
    while ([0, 6].includes(new Date(startMs + days * DAY_MS).getUTCDay())) days++;
    const later = (at: Date | string) => new Date(new Date(at).getTime() + days * DAY_MS);
    await practice.rows(async (tx) => {
      const taken = await tx.findBy(Occupancy, { labStepId: step.id });
      const claims = taken.map(({ resourceId, startsAt, endsAt, purpose }) => ({
        ...{ resourceId, purpose, labStepId: step.id },
        ...{ startsAt: later(startsAt), endsAt: later(endsAt) },
      }));
      await claim(tx, claims, NOW, { labStepIds: [step.id] });
      const segments = step.segments.map((segment) => ({
        ...segment,
        ...{ startsAt: later(segment.startsAt).toISOString(), endsAt: later(segment.endsAt).toISOString() },
      }));
      const times = { startsAt: later(found(step.startsAt)), endsAt: later(found(step.endsAt)), segments };
      await tx.update(LabStep, { id: step.id }, { ...times, version: step.version + 1 });
    });
    return stepOf(code);
  }

  it('has nothing better to propose while everything stands as it was offered', async () => {
    const found = await searched();
    expect(found).toMatchObject({ state: 'finished', late: [] });
    expect(found.proposals.filter(({ kind }) => kind !== 'level-load')).toEqual([]);
  });

  it(
    'moves late work within its slack once somebody accepts, and shows before what that does',
    async () => {
      const late = await planTooLate('trays');
      const { proposals, late: named } = await searched();
      expect(named).toMatchObject([{ caseId: booked.id }]);
      expect(found(named[0]).cause).toMatch(/waits .* for |Empty benches/);
      const proposal = found(proposals.find(({ kind }) => kind === 'within-slack'));
      expect(proposal).toMatchObject({ before: { lateCases: 1 }, after: { lateCases: 0, lateMinutes: 0 } });
      expect(proposal.certainty).toMatch(/^Proved/);
      expect(proposal.moves.length).toBeGreaterThan(0);
      expect(proposal.days.length).toBeGreaterThan(0);
      expect(await stepOf('trays')).toEqual(late);

      const after = await accept(proposal);
      expect(after.proposals.find(({ id }) => id === proposal.id)?.state).toBe('accepted');
      const moved = await stepOf('trays');
      expect(moved.startsAt?.toISOString()).toBe(proposal.moves.find(({ title }) => title === 'Custom trays')?.toAt);
      expect(found(moved.startsAt) < found(late.startsAt)).toBe(true);
      const times = await practice.rows((tx) => tx.findBy(Occupancy, { labStepId: moved.id }));
      expect(
        times.every(({ startsAt, endsAt }) => startsAt >= found(moved.startsAt) && endsAt <= found(moved.endsAt)),
      ).toBe(true);
      expect(await overlaps(practice)).toBe(0);
      const load = await bench.call({
        method: 'GET',
        path: `/lab/load?laboratoryId=${laboratoryId}&from=2027-01-04`,
        answer: loadView,
      });
      expect(load.atRisk).toEqual([]);
      expect((await refusal(accept(proposal))).status).toBe(412);
    },
    LONG_MS,
  );

  it('keeps with a plan what makes it the same again', async () => {
    const kept = await practice.rows(async (tx) =>
      found((await tx.findBy(WorkloadProposal, { kind: 'within-slack' }))[0]),
    );
    expect(kept.epochs).toBeGreaterThanOrEqual(0);
    expect(kept).toMatchObject({ seed: 1, streams: 2, bound: { lateness: 0, verdict: 'proved best' } });
    const { instanceHash } = await practice.rows((tx) => tx.findOneByOrFail(WorkloadRun, { id: kept.runId }));
    expect(instanceHash).toMatch(/^[0-9a-f]{64}$/);
  });

  it(
    'moves nothing when work has changed since, and says so',
    async () => {
      await planTooLate('trays');
      const { proposals } = await searched();
      const proposal = found(proposals.find(({ kind }) => kind === 'within-slack'));
      await practice.rows((tx) => tx.increment(LabStep, { caseId: booked.id, code: 'trays' }, 'version', 1));
      const before = await allSteps();
      const refused = await refusal(accept(proposal));
      expect(refused).toMatchObject({ status: 409, problem: { code: 'casework.plan-conflict' } });
      expect(await allSteps()).toEqual(before);
    },
    LONG_MS,
  );

  it(
    'has one search under way at a time, which can be cancelled and touches nothing',
    async () => {
      const before = await allSteps();
      const asked = await ask(60);
      expect((await refusal(ask(3))).status).toBe(409);
      const searching = run(asked.id);
      for (;;) {
        const { state, epochs } = await view();
        if (state === 'running' && epochs > 0) break;
        await new Promise((resolve) => setTimeout(resolve, 100));
      }
      expect(await cancel(await view())).toMatchObject({ state: 'cancelled', proposals: [] });
      await searching;
      expect((await view()).state).toBe('cancelled');
      expect(await allSteps()).toEqual(before);
    },
    LONG_MS,
  );

  it(
    'says what it does from the moment it begins',
    async () => {
      const { id } = await ask(1);
      const said: string[] = [];
      /** Asks before each of the run's transactions. */
      const watched = new Proxy(db, {
        get: (target, key) =>
          key !== 'transaction'
            ? (Reflect.get(target, key) as unknown)
            : async (...work: Parameters<DataSource['transaction']>) => {
                said.push((await view()).sentence);
                return target.transaction(...work);
              },
      });
      const { organisationId } = practice;
      await runWorkload({ db: watched, searches }, { organisationId, runId: id }, { now: () => NOW });
      expect(said.slice(0, 2)).toEqual([
        'The search begins in a moment. Nothing planned changes.',
        'Moving work within its slack, round 0. Nothing planned changes.',
      ]);
      expect(said.filter((each) => each.includes('undefined'))).toEqual([]);
    },
    LONG_MS,
  );
});
