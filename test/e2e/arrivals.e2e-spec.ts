import { sweep } from '@archwright/casework';
import {
  arrivalCheckPage,
  arrivalCheckView,
  callList,
  caseView,
  objectView,
  type ArrivalCheckView,
  type CaseView,
} from '@archwright/contracts';
import { ArrivalCheck, CourierLeg, LabStep, Notice } from '@archwright/records';
import { IsNull } from 'typeorm';
import { booked, caseOf, openTwoPractices, type TwoPractices } from './cases-client.js';
import { registered } from './custody-parcels.js';

const HOUR_MS = 3_600_000;

/** A case whose second visit waits for what the laboratory makes after the first. */
interface Waiting {
  readonly view: CaseView;
  readonly stage: string;
  readonly visitAt: Date;
}

describe('the check of what has arrived for a visit', () => {
  let two: TwoPractices;
  beforeAll(async () => {
    two = await openTwoPractices();
  }, 60_000);
  afterAll(() => two.close());

  const aWaitingCase = async (): Promise<Waiting> => {
    const view = await booked(two.desk, (await caseOf(two.desk)).id);
    const stage = view.stages.find(({ code }) => view.labSteps.some(({ beforeStage }) => beforeStage === code));
    if (stage?.startsAt == null) throw new Error('A visit waits for laboratory work.');
    return { view, stage: stage.code, visitAt: new Date(stage.startsAt) };
  };
  const hoursBefore = ({ visitAt }: Waiting, hours: number): Date => new Date(visitAt.getTime() - hours * HOUR_MS);
  const sweepAt = async (now: Date): Promise<void> => {
    await sweep(two.api.db, two.organisationId, now);
  };
  const checksOf = async ({ view, stage }: Waiting): Promise<ArrivalCheckView[]> => {
    const { items } = await two.desk.get(`GET /arrival-checks?caseId=${view.id}`, arrivalCheckPage);
    return items.filter((check) => check.stage === stage);
  };
  const onlyCheck = async (waiting: Waiting): Promise<ArrivalCheckView> => {
    const [check, ...more] = await checksOf(waiting);
    if (check === undefined || more.length > 0) throw new Error('There is not exactly one check.');
    return check;
  };
  const callsOf = async ({ view }: Waiting) => {
    const { items } = await two.desk.get('GET /call-tasks', callList);
    return items.filter(({ caseId, reason }) => caseId === view.id && reason.startsWith('Not arrived'));
  };
  const finish = ({ view, stage }: Waiting, finishedAt: Date) =>
    two.rows((tx) =>
      tx.update(
        LabStep,
        { caseId: view.id, beforeStage: stage },
        { state: 'finished', startedAt: finishedAt, finishedAt },
      ),
    );

  it('asks the clinic once, days ahead, when the work is behind its plan', async () => {
    const waiting = await aWaitingCase();
    await sweepAt(hoursBefore(waiting, 73));
    expect(await checksOf(waiting)).toEqual([]);
    await sweepAt(hoursBefore(waiting, 5));
    await sweepAt(hoursBefore(waiting, 4));
    const check = await onlyCheck(waiting);
    expect(check).toMatchObject({
      state: 'open',
      visitAt: waiting.visitAt.toISOString(),
      caseNumber: waiting.view.number,
    });
    expect(check.missing).not.toEqual([]);
    expect(check.reason).toMatch(/should have begun/);
    const [call, ...more] = await callsOf(waiting);
    expect(more).toEqual([]);
    expect(call?.reason).toContain(`Not arrived for`);
    expect(call?.reason).toContain('Decide: wait for it, or call and move the visit.');
    const told = await two.rows((tx) => tx.countBy(Notice, { caseId: waiting.view.id, kind: 'work-not-arrived' }));
    expect(told).toBe(1);
  }, 60_000);

  it('is decided once, by the clinic, on what was seen; waiting takes the call away, moving keeps it', async () => {
    const patient = await aWaitingCase();
    await sweepAt(hoursBefore(patient, 5));
    const check = await onlyCheck(patient);
    const path = `POST /arrival-checks/${check.id}/decision`;
    const body = { decision: 'wait', note: 'The bench promises it for the evening.' };
    expect((await two.bench.ask(path, { version: check.version, body })).status).toBe(403);
    expect((await two.stranger.ask(path, { version: check.version, body })).status).toBe(404);
    expect((await two.desk.ask(path, { body })).status).toBe(428);
    expect((await two.desk.ask(path, { version: check.version + 1, body })).status).toBe(412);
    const decided = await two.desk.get(path, arrivalCheckView, { version: check.version, body });
    expect(decided).toMatchObject({ state: 'decided', decision: 'wait', decisionNote: body.note });
    expect((await two.desk.ask(path, { version: decided.version, body })).status).toBe(409);
    expect(await callsOf(patient)).toEqual([]);
    const { events } = await two.desk.get(`GET /cases/${patient.view.id}`, caseView);
    expect(events.at(-1)?.sentence).toContain('The visit stays, although its work has not arrived');

    const impatient = await aWaitingCase();
    await sweepAt(hoursBefore(impatient, 5));
    const other = await onlyCheck(impatient);
    const move = { version: other.version, body: { decision: 'move', note: 'Not before Friday.' } };
    await two.desk.get(`POST /arrival-checks/${other.id}/decision`, arrivalCheckView, move);
    expect(await callsOf(impatient)).toHaveLength(1);
  }, 90_000);

  it('leaves alone what the plan still brings in time, and looks again when it should be there', async () => {
    const waiting = await aWaitingCase();
    await finish(waiting, hoursBefore(waiting, 60));
    const where = { caseId: waiting.view.id, direction: 'to-clinic' as const, beforeStage: waiting.stage };
    const legs = await two.rows((tx) => tx.findBy(CourierLeg, { ...where, holdId: IsNull() }));
    const arrivesAt = hoursBefore(waiting, 20);
    expect(legs).not.toEqual([]);
    await two.rows((tx) => tx.update(CourierLeg, where, { departsAt: hoursBefore(waiting, 22), arrivesAt }));
    await sweepAt(hoursBefore(waiting, 48));
    expect(await onlyCheck(waiting)).toMatchObject({ state: 'on-its-way', raisedAt: null });
    await sweepAt(hoursBefore(waiting, 21));
    expect((await onlyCheck(waiting)).state).toBe('on-its-way');
    expect(await callsOf(waiting)).toEqual([]);
    await sweepAt(hoursBefore(waiting, 19));
    expect((await onlyCheck(waiting)).state).toBe('arrived');
  }, 60_000);

  it('believes the shelf before the plan: a quarantined object is missing until it is released', async () => {
    const waiting = await aWaitingCase();
    const { view } = waiting;
    await finish(waiting, hoursBefore(waiting, 60));
    await two.rows((tx) => tx.update(CourierLeg, { caseId: view.id }, { state: 'arrived' }));
    const [clinicId = ''] = view.clinicIds;
    const tray = await registered(
      two.desk,
      { caseId: view.id, number: view.number, clinicId, laboratoryId: '' },
      { kind: 'other' },
    );
    const act = (version: number, body: Record<string, unknown>) =>
      two.desk.get(`POST /objects/${tray.id}/actions`, objectView, { version, body });
    const aside = await act(tray.version, { action: 'quarantine', reason: 'Cracked' });
    await sweepAt(hoursBefore(waiting, 48));
    expect(await onlyCheck(waiting)).toMatchObject({
      state: 'open',
      reason: `${tray.code}: It is quarantined: Cracked`,
    });
    await act(aside.version, { action: 'release', reason: 'Mended' });
    await sweepAt(hoursBefore(waiting, 47));
    expect(await onlyCheck(waiting)).toMatchObject({ state: 'arrived', missing: [] });
    expect(await callsOf(waiting)).toEqual([]);
  }, 60_000);

  it('is over when the visit is not to take place as it was timed', async () => {
    const waiting = await aWaitingCase();
    await sweepAt(hoursBefore(waiting, 5));
    expect(await callsOf(waiting)).toHaveLength(1);
    const { version } = await two.desk.get(`GET /cases/${waiting.view.id}`, caseView);
    const body = { to: 'paused', reason: 'Illness' };
    await two.desk.get(`PUT /cases/${waiting.view.id}/state`, caseView, { version, body });
    await sweepAt(hoursBefore(waiting, 4));
    expect((await onlyCheck(waiting)).state).toBe('withdrawn');
    expect(await callsOf(waiting)).toEqual([]);
  }, 60_000);

  it('shows a laboratory no name, and another organisation nothing', async () => {
    const waiting = await aWaitingCase();
    await sweepAt(hoursBefore(waiting, 5));
    const check = await onlyCheck(waiting);
    expect(check.patientName).toContain('Mole-Example');
    const seen = await two.bench.ask(`GET /arrival-checks/${check.id}`);
    expect(seen.status).toBe(200);
    expect(JSON.stringify(seen.body)).not.toContain('Mole');
    expect((await two.stranger.ask(`GET /arrival-checks/${check.id}`)).status).toBe(404);
    expect((await two.stranger.get('GET /arrival-checks', arrivalCheckPage)).items).toEqual([]);
  }, 60_000);

  it('is made once when two sweeps run at once', async () => {
    const waiting = await aWaitingCase();
    const now = hoursBefore(waiting, 5);
    await Promise.all([sweepAt(now), sweepAt(now)]);
    const made = await two.rows((tx) => tx.countBy(ArrivalCheck, { caseId: waiting.view.id, state: 'open' }));
    expect(made).toBe(1);
    expect(await callsOf(waiting)).toHaveLength(1);
  }, 60_000);
});
