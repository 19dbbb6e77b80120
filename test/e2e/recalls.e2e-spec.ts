import {
  aftercareView,
  caseView,
  holdView,
  offersView,
  recallPage,
  recallView,
  ripple,
  type CaseView,
  type RecallView,
} from '@archwright/contracts';
import { Organisation, Recall, uuidv7 } from '@archwright/records';
import { bookedCase, found, openBookingPractice, openCaseOf, type BookingPractice } from './booking-practice.js';
import { Chairside, refusal } from './capture-chairside.js';
import { NOW } from './practice/demo-api.js';

const TODAY = NOW.toISOString().slice(0, 10);
const daysAfter = (on: string, days: number) => new Date(Date.parse(on) + days * 86_400_000).toISOString().slice(0, 10);

describe('recalls over HTTP', () => {
  let practice: BookingPractice;
  let chairside: Chairside;

  beforeAll(async () => {
    practice = await openBookingPractice();
  }, 60_000);
  beforeEach(async () => {
    chairside = await Chairside.at(practice, NOW);
  });
  afterAll(() => practice.close());

  const recallsOf = async (id: string): Promise<RecallView[]> =>
    (await chairside.desk.call({ method: 'GET', path: `/cases/${id}/aftercare`, answer: aftercareView })).recalls;
  const list = (query = '') => chairside.desk.call({ method: 'GET', path: `/recalls${query}`, answer: recallPage });
  const offersFor = (id: string, review?: string) =>
    chairside.desk.call({
      method: 'POST',
      path: `/cases/${id}/offers`,
      body: { count: 1, review },
      answer: offersView,
    });
  const decide = (recall: RecallView, body: object, version = recall.version) =>
    chairside.desk.call({
      method: 'PUT',
      path: `/recalls/${recall.id}/decision`,
      version,
      body,
      answer: recallView,
    });

  /** A case whose check is due, as a placement long ago left it behind. */
  async function aDueCheck(stage: string, dueOn = TODAY): Promise<{ id: string; recall: RecallView }> {
    const { id } = await openCaseOf(practice);
    await practice.rows((tx) => tx.insert(Recall, { id: uuidv7(), caseId: id, kind: stage, dueOn, state: 'due' }));
    return { id, recall: found((await recallsOf(id))[0]) };
  }

  /** The practice's own rule. */
  const recallEvery = (recallMonths: number) =>
    practice.rows(async (tx) => {
      const { id, settings } = await tx.findOneByOrFail(Organisation, { id: practice.organisationId });
      await tx.update(Organisation, { id }, { settings: { ...settings, recallMonths } });
    });

  async function bookCheck(id: string, stage: string): Promise<CaseView> {
    const { offers } = await offersFor(id, stage);
    const offer = found(offers[0]);
    expect(offer.plan.visits.map(({ stages }) => stages)).toEqual([[stage]]);
    const hold = await chairside.desk.call({
      method: 'POST',
      path: `/cases/${id}/holds`,
      body: { offerId: offer.id, kind: 'phone' },
      answer: holdView,
    });
    const body = { planHash: hold.planHash };
    return chairside.desk.call({ method: 'POST', path: `/holds/${hold.id}/confirm`, body, answer: caseView });
  }

  it('are booked through offers for nothing else, and due again when the visit is cancelled', async () => {
    const { id, recall } = await aDueCheck('RN');
    await bookCheck(id, 'RN');
    const [booked] = await recallsOf(id);
    expect(booked).toMatchObject({ id: recall.id, state: 'booked' });
    expect((await list('?limit=100')).items.map((each) => each.id)).not.toContain(recall.id);
    expect((await list('?state=booked')).items.map((each) => each.id)).toContain(recall.id);
    const reason = 'The patient is on a journey.';
    const cancel = await chairside.desk.call({
      method: 'POST',
      path: '/ripples/cancel',
      body: { appointmentId: booked?.appointmentId, reason, then: 'drop-rest' },
      answer: ripple,
    });
    const path = `/ripples/${cancel.id}/apply`;
    await chairside.desk.call({ method: 'POST', path, body: { planHash: cancel.planHash }, answer: caseView });
    expect(await recallsOf(id)).toMatchObject([{ state: 'due', appointmentId: null, startsAt: null }]);
  });

  it('are not planned before they are due, nor when nothing is', async () => {
    const dueOn = daysAfter(TODAY, 10);
    const { id } = await aDueCheck('RN', dueOn);
    const { offers } = await offersFor(id, 'RN');
    expect(found(offers[0]).plan.visits[0]?.startsAt.slice(0, 10)).toBe(dueOn);
    const refused = await refusal(offersFor(id, 'R3'));
    expect(refused.status).toBe(400);
    expect(refused.problem.errors?.[0]).toMatchObject({ path: 'review', accepted: 'RN' });
  });

  it('are listed the longest due first, page by page', async () => {
    await practice.rows((tx) => tx.query('DELETE FROM recall'));
    const dates = [-3, -2, -2, -1].map((days) => daysAfter(TODAY, days));
    for (const dueOn of [...dates].reverse()) await aDueCheck('RN', dueOn);
    const first = await list('?limit=3');
    const second = await list(`?limit=3&cursor=${found(first.next)}`);
    expect([...first.items, ...second.items].map(({ dueOn }) => dueOn)).toEqual(dates);
    expect(second.next).toBeNull();
    expect((await list(`?until=${daysAfter(TODAY, -2)}`)).items).toHaveLength(3);
    const refused = await refusal(list('?cursor=nonsense'));
    expect(refused.status).toBe(400);
  });

  it('are declined with a reason, followed by the next one by the rule of the practice', async () => {
    const { id, recall } = await aDueCheck('RN');
    expect((await refusal(decide(recall, { decision: 'declined' }))).status).toBe(400);
    expect((await refusal(decide(recall, { decision: 'declined', reason: 'No.' }, 7))).status).toBe(412);
    await recallEvery(6);
    const declined = await decide(recall, { decision: 'declined', reason: 'Sees another dentist.' });
    expect(declined).toMatchObject({ state: 'declined', reason: 'Sees another dentist.', version: 2 });
    expect(await recallsOf(id)).toMatchObject([{ state: 'declined' }, { state: 'due', dueOn: '2027-07-04' }]);
    expect((await refusal(decide(declined, { decision: 'done', reason: 'By telephone.' }))).status).toBe(409);
  });

  it('are put off to a date to come', async () => {
    const { recall } = await aDueCheck('R4');
    const reason = 'In hospital until then.';
    const early = { decision: 'put-off', dueOn: daysAfter(TODAY, -1), reason };
    expect((await refusal(decide(recall, early))).status).toBe(400);
    const later = { decision: 'put-off', dueOn: daysAfter(TODAY, 30), reason };
    expect(await decide(recall, later)).toMatchObject({ state: 'due', dueOn: later.dueOn, reason });
  });

  it('are settled by the desk and nobody else, at their own clinics', async () => {
    const { recall } = await aDueCheck('RN');
    const call = (session: Chairside['bench']) => session.call({ method: 'GET', path: '/recalls', answer: recallPage });
    expect((await refusal(call(chairside.bench))).status).toBe(403);
    const path = `/recalls/${uuidv7()}/decision`;
    const body = { decision: 'done', reason: 'By telephone.' };
    const unknown = chairside.desk.call({ method: 'PUT', path, version: 1, body, answer: recallView });
    expect((await refusal(unknown)).status).toBe(404);
    expect((await call(chairside.clinician)).items.map(({ id }) => id)).toContain(recall.id);
  });

  it('are done when their visit has passed, and the next one is due', async () => {
    await recallEvery(6);
    const { id } = await aDueCheck('RN');
    await bookCheck(id, 'RN');
    const begun = await chairside.begin(id, 'RN');
    await chairside.complete(await chairside.captureAll(begun), 'passed');
    const [done, next] = await recallsOf(id);
    expect([done?.state, next?.state]).toEqual(['done', 'due']);
    expect(next?.dueOn.slice(0, 7)).toBe('2027-07');
    const { stages } = await chairside.state(id);
    expect(stages.filter(({ code }) => code === 'RN').map(({ state }) => state)).toEqual(['passed', 'waiting']);
    const { offers } = await offersFor(id);
    expect(found(offers[0]).plan.visits.flatMap((visit) => visit.stages)).not.toContain('RN');
  });

  it('are due from the day of placement, on the date of the path', async () => {
    const { id } = await bookedCase(practice, { path: 'repair', clinics: 1 });
    await chairside.consent(id);
    await chairside.passVisit(id, 'P1');
    await chairside.makeLabWork(id, 'P1');
    await chairside.moveClock(new Date(found((await chairside.stage(id, 'P2')).startsAt)));
    await chairside.passVisit(id, 'P2');
    const placedOn = found((await chairside.stage(id, 'P2')).startsAt).slice(0, 10);
    const recalls = await recallsOf(id);
    expect(recalls).toMatchObject([{ stage: 'R2', title: 'Second check: sore spots and occlusion', state: 'due' }]);
    expect(recalls[0]?.dueOn).toBe(daysAfter(placedOn, 5));
  }, 60_000);
});
