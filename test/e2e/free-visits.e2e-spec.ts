import { jest } from '@jest/globals';
import { runWorkload, type Searches } from '@archwright/casework';
import {
  caseView,
  visitProposal,
  visitProposals,
  workloadRun,
  workloadView,
  type CaseView,
  type VisitProposal,
  type WorkloadRunView,
} from '@archwright/contracts';
import { Appointment, CourierLeg, LabStep, Occupancy, TreatmentCase, WorkloadProposal } from '@archwright/records';
import { Not, IsNull, type DataSource } from 'typeorm';
import type { ApiSession } from '../../apps/cli/src/demo/api-session.js';
import { NOW, found, openBookingPractice, overlaps, type BookingPractice } from './booking-practice.js';
import { refusal } from './capture-chairside.js';
import { twoCasesForOneTime } from './two-cases-for-one-time.js';

jest.setTimeout(300_000);

describe('free visits chosen again', () => {
  let practice: BookingPractice;
  let db: DataSource;
  let bench: ApiSession;
  let firm: CaseView;
  let free: CaseView;
  let laboratoryId: string;

  beforeAll(async () => {
    practice = await openBookingPractice();
    db = await practice.rows((tx) => Promise.resolve(tx.dataSource));
    bench = await practice.signIn('bench');
    ({ firm, free } = await twoCasesForOneTime(practice, (work) => practice.rows(work), NOW));
    laboratoryId = found((await stepOf(firm, 'contour')).laboratoryId);
  });
  afterAll(() => practice.close());

  const stepOf = ({ id }: CaseView, code: string): Promise<LabStep> =>
    practice.rows((tx) => tx.findOneByOrFail(LabStep, { caseId: id, code }));
  const caseNow = ({ id }: CaseView) => practice.desk.call({ method: 'GET', path: `/cases/${id}`, answer: caseView });
  const visitsOf = ({ id }: CaseView): Promise<Appointment[]> =>
    practice.rows(async (tx) => {
      const rows: { id: string }[] = await tx.query(
        `SELECT x.appointment_id AS id FROM appointment_stage x JOIN stage s ON s.id = x.stage_id WHERE s.case_id = $1`,
        [id],
      );
      const visits = await tx.findBy(Appointment, rows.map((row) => ({ id: row.id }))); // prettier-ignore
      return visits.sort((one, other) => one.id.localeCompare(other.id));
    });

  async function searched(): Promise<WorkloadRunView> {
    const asked = await bench.call({
      method: 'POST',
      path: '/lab/workload/runs',
      body: { laboratoryId, seconds: 8 },
      answer: workloadRun,
    });
    const { organisationId, searches } = practice;
    await runWorkload({ db, searches }, { organisationId, runId: asked.id }, { now: () => NOW });
    const path = `/lab/workload?laboratoryId=${laboratoryId}`;
    return found((await bench.call({ method: 'GET', path, answer: workloadView })).run);
  }
  const shownToDesk = async (): Promise<VisitProposal> =>
    found((await practice.desk.call({ method: 'GET', path: '/visit-proposals', answer: visitProposals })).items[0]);
  const accept = ({ id, version }: VisitProposal) =>
    practice.desk.call({ method: 'POST', path: `/visit-proposals/${id}/acceptance`, version, answer: visitProposal });
  const everything = async () => ({
    visits: [...(await visitsOf(firm)), ...(await visitsOf(free))],
    steps: await practice.rows((tx) => tx.find(LabStep, { order: { id: 'ASC' } })),
    times: await practice.rows((tx) => tx.find(Occupancy, { order: { id: 'ASC' } })),
  });

  let run: WorkloadRunView;
  let made: { search: Parameters<Searches['visits']>[0]; found: Awaited<ReturnType<Searches['visits']>> };

  it('are proposed where no other plan gets the work done in time, and nothing moves by that', async () => {
    const search = jest.spyOn(practice.searches, 'visits');
    const before = await everything();
    run = await searched();
    expect(run.late).toMatchObject([{ caseId: firm.id }]);
    const proposal = found(run.proposals.find(({ kind }) => kind === 'free-visits'));
    expect(proposal).toMatchObject({ before: { lateCases: 1 }, after: { lateCases: 0, lateMinutes: 0 } });
    expect(proposal.certainty).toMatch(/^Proved: .* At least one visit has to move for that/);
    expect(new Set(proposal.visits.map(({ caseId }) => caseId))).toEqual(new Set([free.id]));
    expect(proposal.moves.map(({ caseId, title }) => [caseId, title])).toContainEqual([firm.id, 'Wax contour']);
    expect(proposal.days.length).toBeGreaterThan(0);
    expect(await everything()).toEqual(before);
    const row = await practice.rows((tx) => tx.findOneByOrFail(WorkloadProposal, { id: proposal.id }));
    expect(row).toMatchObject({ seed: 1, streams: 2, bound: { lateness: 0, movedVisits: 1 } });
    expect(row.epochs).toBeGreaterThan(0);
    made = {
      search: found(search.mock.calls[0])[0],
      found: (await found(search.mock.results[0]).value) as typeof made.found,
    };
    search.mockRestore();
  });

  it('are found again by the same seed and number of rounds', async () => {
    const { epochs } = made.found;
    const again = { ...made.search, until: { epochs } };
    expect(await practice.searches.visits(again, new AbortController().signal, () => undefined)).toEqual(made.found);
  });

  it('are looked for no longer once nobody waits', async () => {
    const cancelling = new AbortController();
    const searching = practice.searches.visits(made.search, cancelling.signal, () => undefined);
    cancelling.abort();
    await expect(searching).rejects.toThrow();
  });

  it('move nothing of what the laboratory may decide by itself', async () => {
    const { id, version } = found(run.proposals.find(({ kind }) => kind === 'free-visits'));
    const path = `/lab/workload/proposals/${id}/accept`;
    const refused = await refusal(bench.call({ method: 'POST', path, version, answer: workloadRun }));
    expect(refused).toMatchObject({ status: 409, problem: { code: 'casework.state-conflict' } });
  });

  it('are shown to the front desk with everybody who is to be called', async () => {
    const proposal = await shownToDesk();
    const calls = proposal.ripples.flatMap((ripple) => ripple.calls);
    expect(calls).toMatchObject([{ patientName: 'Ida Booking-Example', phone: '+44 20 7946 0012' }]);
    const moved = proposal.ripples.flatMap(({ visits }) => visits);
    const states = new Map((await visitsOf(free)).map(({ id, state }) => [id, state]));
    expect(moved.length).toBeGreaterThan(0);
    expect(moved.map(({ appointmentId }) => states.get(found(appointmentId)))).toEqual(moved.map(() => 'provisional'));
  });

  it('move nothing when one of the cases has changed since', async () => {
    const proposal = await shownToDesk();
    await practice.rows((tx) => tx.increment(TreatmentCase, { id: firm.id }, 'version', 1));
    const before = await everything();
    const refused = await refusal(accept(proposal));
    expect(refused).toMatchObject({ status: 409, problem: { code: 'casework.plan-conflict' } });
    expect(await everything()).toEqual(before);
  });

  it('move in all cases at once when the front desk accepts, and stay provisional', async () => {
    await searched();
    const proposal = await shownToDesk();
    const [firmVisits, freeVisits] = [await visitsOf(firm), await visitsOf(free)];
    expect(await accept(proposal)).toMatchObject({ id: proposal.id, state: 'accepted' });
    expect(await overlaps(practice)).toBe(0);
    expect(await visitsOf(firm)).toEqual(firmVisits);
    const contour = await stepOf(firm, 'contour');
    const due = found((await caseNow(firm)).stages.find(({ code }) => code === 'V4')?.startsAt);
    expect(found(contour.endsAt).getTime()).toBeLessThan(Date.parse(due));

    const planned = new Map(proposal.ripples.flatMap(({ visits }) => visits.map((each) => [each.appointmentId, each])));
    for (const now of await visitsOf(free)) {
      const before = found(freeVisits.find(({ id }) => id === now.id));
      expect(now.state).toBe(before.state);
      expect(now.startsAt.toISOString()).toBe(planned.get(now.id)?.after ?? before.startsAt.toISOString());
    }
    const held = await practice.rows((tx) => tx.findBy(Occupancy, { holdId: Not(IsNull()) }));
    const kept = (await visitsOf(free)).filter(({ state }) => state === 'provisional').map(({ id }) => id);
    expect(new Set(held.flatMap(({ appointmentId }) => appointmentId ?? []))).toEqual(new Set(kept));
    const legs = await practice.rows((tx) => tx.findBy(CourierLeg, { caseId: free.id, state: 'planned' }));
    const ways = legs.map(({ direction, beforeStage }) => `${direction} ${beforeStage ?? ''}`);
    expect(new Set(ways).size).toBe(ways.length);

    const path = `/lab/workload?laboratoryId=${laboratoryId}`;
    const after = found((await bench.call({ method: 'GET', path, answer: workloadView })).run);
    expect(after.proposals.find(({ kind }) => kind === 'free-visits')?.state).toBe('accepted');
    const list = await practice.desk.call({ method: 'GET', path: '/visit-proposals', answer: visitProposals });
    expect(list.items).toEqual([]);
    expect((await refusal(accept(proposal))).status).toBe(412);
  });

  it('leave what is late to nobody', async () => {
    expect((await searched()).late).toEqual([]);
  });
});
