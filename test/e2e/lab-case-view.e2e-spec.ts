import { dispatchStep, labCaseView, openLabQuestions, type LabCaseView } from '@archwright/contracts';
import { z } from 'zod';
import { NOW, bookedCase, found, openBookingPractice, type BookingPractice } from './booking-practice.js';
import { Chairside, refusal } from './capture-chairside.js';

const LONG_MS = 240_000;

/** A booked case whose first visit is over and whose work order is signed, as the laboratory meets it over HTTP. */
describe('a case at its laboratory', () => {
  let practice: BookingPractice;
  let chair: Chairside;
  let caseId: string;

  beforeAll(async () => {
    practice = await openBookingPractice();
    chair = await Chairside.at(practice, NOW);
    caseId = (await bookedCase(practice, { path: 'digital-printed-bases' })).id;
    await chair.begin(caseId, 'D1');
    await chair.consent(caseId);
    await chair.passVisitUnderWay(caseId, 'D1');
  }, LONG_MS);
  afterAll(() => practice.close());

  const seen = (): Promise<LabCaseView> =>
    chair.bench.call({ method: 'GET', path: `/cases/${caseId}`, answer: labCaseView.strict() });
  const firstStep = async () => found((await seen()).labSteps[0]);
  const actions = async () => `/lab/steps/${(await firstStep()).id}/actions`;
  const versionOf = async () => {
    const path = `/lab/steps/${(await firstStep()).id}`;
    return (await chair.bench.call({ method: 'GET', path, answer: dispatchStep })).version;
  };

  it('is the signed order, the work with its due times and the visits beside it', async () => {
    const { workOrders, labSteps, stages } = await seen();
    const order = found(workOrders[0]);
    expect(order).toMatchObject({ stage: 'D1', superseded: false, arches: ['upper', 'lower'] });
    expect(order.signedBy).toMatch(/^Dr /);
    expect(order.work).toContain(found(labSteps[0]).title);
    expect(order.values).toContainEqual({ name: 'Disinfected with', value: 'surface agent, full contact time' });
    expect(order.values.every(({ name, value }) => name !== '' && value !== '')).toBe(true);
    expect(found(labSteps[0])).toMatchObject({ waitsFor: null, question: null });
    expect(found(labSteps[0]).dueBackAt).not.toBeNull();
    expect(found(labSteps[1]).waitsFor).toContain('to be finished');
    const beside = new Set(labSteps.flatMap(({ afterStage, beforeStage }) => [afterStage, beforeStage]));
    expect(new Set(stages.map(({ code }) => code))).toEqual(beside);
  });

  it('names nobody', async () => {
    const { patient } = await chair.state(caseId);
    const text = JSON.stringify(await seen());
    for (const part of ['Booking-Example', patient.id, patient.birthOn, '7946']) expect(text).not.toContain(part);
  });

  it('refuses a question without words, and a step that was not read before', async () => {
    const path = await actions();
    const empty = { method: 'POST', path, version: await versionOf(), body: { action: 'ask', question: ' ' } } as const;
    const refused = await refusal(chair.bench.call({ ...empty, answer: dispatchStep }));
    expect(refused.status).toBe(400);
    expect(refused.problem.errors?.map((error) => error.path)).toEqual(['question']);
    const blind = { method: 'POST', path, body: { action: 'start' }, answer: dispatchStep } as const;
    expect((await refusal(chair.bench.call(blind))).status).toBe(428);
  });

  it('has its question before the clinic, answered by a clinician, once', async () => {
    const body = { action: 'ask', question: 'Which shade?' };
    const asked = await chair.bench.call({
      method: 'POST',
      path: await actions(),
      version: await versionOf(),
      body,
      answer: dispatchStep,
    });
    const { id } = found(asked.question);
    const list = { method: 'GET', path: '/lab/questions', answer: openLabQuestions } as const;
    expect((await refusal(chair.bench.call(list))).status).toBe(403);
    const [open] = (await chair.desk.call(list)).items;
    expect(open).toMatchObject({ id, caseId, question: 'Which shade?', zone: 'Europe/London' });

    const answer = { method: 'POST', path: `/lab/questions/${id}/answer`, answer: z.undefined() } as const;
    const words = { body: { answer: 'As the earlier denture.' } };
    expect((await refusal(chair.desk.call({ ...answer, ...words }))).status).toBe(403);
    expect((await refusal(chair.clinician.call({ ...answer, body: { answer: '' } }))).status).toBe(400);
    await chair.clinician.call({ ...answer, ...words });
    expect((await refusal(chair.clinician.call({ ...answer, ...words }))).status).toBe(409);
    expect((await chair.clinician.call(list)).items).toEqual([]);
    expect((await firstStep()).question).toMatchObject({ answer: 'As the earlier denture.' });
  });
});
