import { jest } from '@jest/globals';
import { alternativesView, appointmentView, caseView, ripple, type CaseView, type Ripple } from '@archwright/contracts';
import { CallTask, Occupancy } from '@archwright/records';
import { RefusedCall } from '../../apps/cli/src/demo/api-session.js';
import { bookedCase, found, openBookingPractice, overlaps, type BookingPractice } from './booking-practice.js';

/** Each offer is an exact search over four months. */
jest.setTimeout(120_000);

let practice: BookingPractice;
let booked: CaseView;
beforeAll(async () => {
  practice = await openBookingPractice();
});
beforeEach(async () => {
  booked = await bookedCase(practice);
});
afterAll(() => practice.close());

type Booked = CaseView['stages'][number];

const visitOf = (stage: string, of: CaseView = booked): Booked => found(of.stages.find(({ code }) => code === stage));
const starts = (of: CaseView) => of.stages.map(({ code, startsAt }) => [code, startsAt]);

const move = (stage: string, startsAt: string): Promise<Ripple> =>
  practice.desk.call({
    method: 'POST',
    path: '/ripples/move',
    body: { appointmentId: visitOf(stage).appointmentId, startsAt },
    answer: ripple,
  });
const cancel = (stage: string, then: 'replan' | 'drop-rest'): Promise<Ripple> =>
  practice.desk.call({
    method: 'POST',
    path: '/ripples/cancel',
    body: { appointmentId: visitOf(stage).appointmentId, reason: 'The patient is away', then },
    answer: ripple,
  });
const apply = ({ id, planHash }: Ripple): Promise<CaseView> =>
  practice.desk.call({ method: 'POST', path: `/ripples/${id}/apply`, body: { planHash }, answer: caseView });

async function alternativesOf(stage: string) {
  const { starts: free } = await practice.desk.call({
    method: 'GET',
    path: `/appointments/${found(visitOf(stage).appointmentId)}/alternatives`,
    answer: alternativesView,
  });
  return free;
}

describe('moving a visit', () => {
  it('to a start that keeps the rest moves that visit alone, exactly as previewed', async () => {
    const free = found((await alternativesOf('V3'))[0]);
    const preview = await move('V3', free.startsAt);
    expect(preview.visits).toHaveLength(1);
    expect(preview.visits[0]).toMatchObject({ before: visitOf('V3').startsAt, after: free.startsAt });
    expect(preview.calls).toHaveLength(1);
    expect(preview.untouchedVisits).toBe(6);
    const current = await practice.desk.call({ method: 'GET', path: `/cases/${booked.id}`, answer: caseView });
    expect(starts(current)).toEqual(starts(booked));

    const applied = await apply(preview);
    expect(visitOf('V3', applied).startsAt).toBe(free.startsAt);
    expect(visitOf('V3', applied).appointmentId).toBe(visitOf('V3').appointmentId);
    expect(starts(applied).filter(([code]) => code !== 'V3')).toEqual(starts(booked).filter(([code]) => code !== 'V3'));
    expect(applied.version).toBeGreaterThan(booked.version);
    expect(await overlaps(practice)).toBe(0);
  });

  it('is refused once the case has changed since the preview', async () => {
    const [first, second] = await alternativesOf('V4');
    const early = await move('V4', found(first).startsAt);
    await apply(await move('V4', found(second).startsAt));
    const late = apply(early);
    await expect(late).rejects.toThrow(RefusedCall);
    await expect(late).rejects.toMatchObject({ status: 409 });
  });

  it('to a time at which nobody works is refused with a sentence', async () => {
    const night = `${found(visitOf('V3').startsAt).slice(0, 10)}T02:00:00.000Z`;
    await expect(move('V3', night)).rejects.toMatchObject({ status: 422, problem: { code: 'casework.no-such-time' } });
  });
});

describe('cancelling a visit', () => {
  it('plans it and what hangs on it anew, with the laboratory work between', async () => {
    const preview = await cancel('V2', 'replan');
    const changed = found(preview.visits.find(({ stages }) => stages.includes('V2')));
    expect(changed.before).toBe(visitOf('V2').startsAt);
    expect(changed.after).not.toBe(changed.before);
    const applied = await apply(preview);
    expect(visitOf('V2', applied).startsAt).toBe(changed.after);
    expect(applied.stages.filter(({ appointmentState }) => appointmentState === 'booked')).toHaveLength(7);
    expect(await overlaps(practice)).toBe(0);
  });

  it('leaves the patient alone until they can come again, and the visit before where it is', async () => {
    const day = 86_400_000;
    const notBefore = new Date(Date.parse(found(visitOf('V2').startsAt)) + 5 * day).toISOString();
    const preview = await practice.desk.call({
      method: 'POST',
      path: '/ripples/cancel',
      body: { appointmentId: visitOf('V2').appointmentId, reason: 'The patient is ill', notBefore, then: 'replan' },
      answer: ripple,
    });
    const after = preview.visits.map((change) => found(change.after));
    expect(after.length).toBeGreaterThan(0);
    expect(after.every((start) => start >= notBefore)).toBe(true);
    expect(preview.visits.some(({ stages }) => stages.includes('V1'))).toBe(false);
  });

  it('drops it and the rest, and gives their time back', async () => {
    const preview = await cancel('V3', 'drop-rest');
    expect(preview.visits.every(({ after }) => after === null)).toBe(true);
    expect(preview.untouchedVisits).toBe(2);
    const dropped = preview.visits.flatMap(({ appointmentId }) => appointmentId ?? []);
    const applied = await apply(preview);
    expect(applied.stages.filter(({ appointmentState }) => appointmentState === 'booked')).toHaveLength(2);
    expect(visitOf('V5', applied)).toMatchObject({ state: 'waiting', startsAt: null });
    expect(applied.labSteps.filter(({ state }) => state === 'planned').every((step) => step.beforeStage === 'V2')).toBe(
      true,
    );
    const left = await practice.rows((tx) => tx.find(Occupancy));
    expect(left.some(({ appointmentId }) => dropped.includes(appointmentId ?? ''))).toBe(false);
  });
});

describe('the day of a visit', () => {
  const act = async (appointmentId: string, action: string) => {
    const { version } = await practice.desk.call({
      method: 'GET',
      path: `/appointments/${appointmentId}`,
      answer: appointmentView,
    });
    return practice.desk.call({
      method: 'POST',
      path: `/appointments/${appointmentId}/actions`,
      version,
      body: { action },
      answer: appointmentView,
    });
  };

  it('goes from arrival to the end, and no step twice', async () => {
    const id = found(visitOf('V1').appointmentId);
    expect((await act(id, 'arrive')).state).toBe('arrived');
    expect((await act(id, 'undo-arrival')).state).toBe('booked');
    expect((await act(id, 'arrive')).state).toBe('arrived');
    expect((await act(id, 'start')).state).toBe('in-progress');
    await expect(act(id, 'miss')).rejects.toMatchObject({ status: 409 });
    expect((await act(id, 'finish')).state).toBe('completed');
    const after = await practice.desk.call({ method: 'GET', path: `/cases/${booked.id}`, answer: caseView });
    expect(visitOf('V1', after).state).toBe('in-progress');
  });

  it('asks for a call when the patient does not come, and the visit can be planned anew', async () => {
    const id = found(visitOf('V1').appointmentId);
    await expect(act(id, 'miss')).rejects.toMatchObject({ status: 409 });
    await practice.moveClock(new Date(Date.parse(found(visitOf('V1').startsAt)) + 15 * 60_000));
    expect((await act(id, 'miss')).state).toBe('missed');
    expect(await practice.rows((tx) => tx.countBy(CallTask, { appointmentId: id, state: 'open' }))).toBeGreaterThan(0);
    const applied = await apply(await cancel('V1', 'replan'));
    expect(visitOf('V1', applied)).toMatchObject({ state: 'planned', appointmentState: 'booked' });
    expect(visitOf('V1', applied).appointmentId).not.toBe(id);
    expect(await overlaps(practice)).toBe(0);
  });
});
