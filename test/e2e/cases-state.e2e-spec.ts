import { caseStateEffects, caseView, practiceView, problem, type CaseView, type Said } from '@archwright/contracts';
import {
  Appointment,
  CallTask,
  LabStep,
  Notice,
  Occupancy,
  Patient,
  Recall,
  Reminder,
  Stage,
  Transfer,
  inOrganisation,
  uuidv7,
} from '@archwright/records';
import { In, Not } from 'typeorm';
import { booked, caseBody, openTwoPractices, patientOf, type TwoPractices } from './cases-client.js';

describe('changing the state of a case', () => {
  let two: TwoPractices;
  beforeAll(async () => {
    two = await openTwoPractices();
  }, 60_000);
  afterAll(() => two.close());

  /** A case whose whole chain is booked; the patient is reached by mail. */
  const aBookedCase = async (patientId?: string): Promise<CaseView> => {
    const mail = { mail: 'ada@example.test', reminderConsent: ['mail'] };
    const id = patientId ?? (await patientOf(two.desk, mail)).id;
    const opened = await two.desk.get('POST /cases', caseView, { body: await caseBody(two.desk, { patientId: id }) });
    return booked(two.desk, opened.id);
  };
  const change = (view: CaseView, body: Record<string, unknown>) =>
    two.desk.get(`PUT /cases/${view.id}/state`, caseView, { version: view.version, body });
  /** Time that the case still takes from anybody. */
  const timeTaken = (view: CaseView) =>
    two.rows((tx) =>
      tx.countBy(Occupancy, [
        { appointmentId: In(view.stages.flatMap(({ appointmentId }) => appointmentId ?? [])) },
        { labStepId: In(view.labSteps.map(({ id }) => id)) },
        { resourceId: view.patient.id },
      ]),
    );
  const inWords = (effects: readonly Said[]): string => effects.map(({ sentence }) => sentence).join(' ');
  const appointmentIds = (view: CaseView) => view.stages.flatMap(({ appointmentId }) => appointmentId ?? []);
  const remindersIn = (view: CaseView, state: Reminder['state']) =>
    two.rows((tx) => tx.countBy(Reminder, { appointmentId: In(appointmentIds(view)), state }));

  it('shows what a pause would do without doing it, then does it', async () => {
    const view = await aBookedCase();
    const visits = new Set(appointmentIds(view)).size;
    const before = await timeTaken(view);
    const scheduled = await remindersIn(view, 'scheduled');
    expect(scheduled).toBeGreaterThan(0);
    const effects = await two.desk.get(`GET /cases/${view.id}/state-effects?to=paused`, caseStateEffects);
    expect(inWords(effects.bookings)).toContain(`${String(visits)} visits are to come.`);
    expect(inWords(effects.labWork)).toContain(`${String(view.labSteps.length)} steps are planned.`);
    expect(inWords(effects.notices)).toContain(`${String(scheduled)} reminders are scheduled.`);
    expect(await timeTaken(view)).toBe(before);

    const paused = await change(view, { to: 'paused', reason: 'Illness', reviewOn: '2027-03-01' });
    expect(paused).toMatchObject({ state: 'paused', version: view.version + 1, stateReason: 'Illness' });
    expect(await timeTaken(view)).toBe(0);
    expect(new Set(paused.stages.map(({ state }) => state))).toEqual(new Set(['waiting']));
    expect(new Set(paused.labSteps.map(({ state, startsAt }) => `${state} ${String(startsAt)}`))).toEqual(
      new Set(['unplanned null']),
    );
    expect(await remindersIn(view, 'scheduled')).toBe(0);
    const cancelled = await two.rows((tx) => tx.findBy(Appointment, { id: In(appointmentIds(view)) }));
    expect(new Set(cancelled.map(({ state, stateReason }) => `${state}: ${stateReason ?? ''}`))).toEqual(
      new Set(['cancelled: Illness']),
    );
    const told = await two.rows((tx) =>
      tx.countBy(Notice, { caseId: view.id, kind: 'visit-cancelled', state: 'scheduled' }),
    );
    expect(told).toBe(visits);
    const line = paused.events.find(({ kind }) => kind === 'state-changed');
    expect(line?.sentence).toBe(
      `The case was open and is now paused: Illness. ${String(visits)} visits were cancelled.`,
    );
  }, 60_000);

  it('asks anew what may have changed before a paused case goes on, and can be booked again', async () => {
    const view = await aBookedCase();
    const dated = { consentOn: '2027-01-04', treatmentApprovedOn: '2027-01-04', medicinesAskedOn: '2027-01-04' };
    const consented = await two.clinician.get(`PUT /cases/${view.id}/consent`, caseView, {
      version: view.version,
      body: dated,
    });
    const paused = await change(consented, { to: 'paused', reason: 'Second opinion' });
    const effects = await two.desk.get(`GET /cases/${view.id}/state-effects?to=open`, caseStateEffects);
    expect(inWords(effects.bookings)).toContain('mucosa, medicines, consent, age of impressions, age of bases');
    const resumed = await change(paused, { to: 'open', reason: 'Goes on' });
    expect(resumed).toMatchObject({
      state: 'open',
      stateReason: null,
      consentOn: null,
      medicinesAskedOn: null,
      treatmentApprovedOn: '2027-01-04',
    });
    const again = await booked(two.desk, view.id);
    expect(again.deliveryOn).not.toBeNull();
  }, 60_000);

  it('stops all of a patient’s cases at once by death, and sends nothing any more', async () => {
    const first = await aBookedCase();
    const patientId = first.patient.id;
    const second = await two.desk.get('POST /cases', caseView, {
      body: await caseBody(two.desk, { patientId }, 'repair'),
    });
    await two.rows(async (tx) => {
      const due = { patientId, state: 'open' as const, dueAt: new Date() };
      await tx.insert(CallTask, { id: uuidv7(), ...due, caseId: second.id, reason: 'Ask about the repair.' });
      await tx.insert(Recall, { id: uuidv7(), caseId: first.id, kind: 'annual', dueOn: '2028-01-01', state: 'due' });
    });
    const over = await change(first, { to: 'ended-by-death', reason: 'Told by the daughter' });
    expect(over.sentence).toBe('The patient has died. Everything was stopped.');
    expect(await two.desk.get(`GET /cases/${second.id}`, caseView)).toMatchObject({
      state: 'ended-by-death',
      version: 2,
    });
    expect(await timeTaken(first)).toBe(0);
    const left = await two.rows(async (tx) => [
      await tx.countBy(Reminder, { appointmentId: In(appointmentIds(first)), state: 'scheduled' }),
      await tx.countBy(Notice, { patientId, state: 'scheduled' }),
      await tx.countBy(CallTask, { patientId, state: 'open' }),
      await tx.countBy(Recall, { caseId: first.id, state: Not('withdrawn') }),
    ]);
    expect(left).toEqual([0, 0, 0, 0]);
    expect(await two.rows((tx) => tx.findOneBy(Patient, { id: patientId }))).toMatchObject({ diedOn: '2027-01-04' });
    const back = await two.desk.ask(`PUT /cases/${first.id}/state`, {
      version: over.version,
      body: { to: 'open', reason: 'A mistake' },
    });
    expect(back.status).toBe(422);
    expect(problem.parse(back.body).detail).toContain('nothing, it is final');
  }, 60_000);

  it('lets begun laboratory work finish in a pause, stops it when given up, and makes it again afterwards', async () => {
    const view = await aBookedCase();
    const [step] = view.labSteps;
    if (step === undefined) throw new Error('The path has laboratory work.');
    await two.rows((tx) => tx.update(LabStep, { id: step.id }, { state: 'started', startedAt: new Date() }));
    const paused = await change(view, { to: 'paused', reason: 'Illness' });
    const stateOf = (now: CaseView) =>
      now.labSteps.filter(({ code }) => code === step.code).map(({ round, state }) => `${String(round)} ${state}`);
    expect(stateOf(paused)).toEqual(['1 started']);
    const effects = await two.desk.get(`GET /cases/${view.id}/state-effects?to=abandoned`, caseStateEffects);
    expect(inWords(effects.labWork)).toContain('1 step is under way.');
    const abandoned = await change(paused, { to: 'abandoned', reason: 'Wants no denture' });
    expect(stateOf(abandoned)).toEqual(['1 discarded']);
    expect(await timeTaken(view)).toBe(0);
    const reopened = await change(abandoned, { to: 'open', reason: 'Changed their mind' });
    expect(stateOf(reopened)).toEqual(['1 discarded', '2 unplanned']);
    expect(reopened.labSteps.filter(({ state }) => state === 'unplanned')).toHaveLength(view.labSteps.length);
  }, 60_000);

  it('hands a case over: the other clinic sees it and takes it, or it goes on where it was', async () => {
    const { clinics } = await two.desk.get('GET /practice', practiceView);
    const [north = '', east = ''] = clinics.map(({ id }) => id);
    const atEast = await two.deskAt(east);
    const patientId = (await patientOf(two.desk)).id;
    const body = await caseBody(two.desk, { patientId, clinicIds: [north] });
    const opened = await two.desk.get('POST /cases', caseView, { body });
    const unnamed = await two.desk.ask(`PUT /cases/${opened.id}/state`, {
      version: 1,
      body: { to: 'transferred', reason: 'Moves' },
    });
    expect(problem.parse(unnamed.body)).toMatchObject({ status: 400, errors: [{ path: 'clinicId' }] });
    expect((await atEast.ask(`GET /cases/${opened.id}`)).status).toBe(404);
    const handed = await change(opened, { to: 'transferred', reason: 'Moves', clinicId: east });
    expect(handed.sentence).toBe('Handed over: Moves.');
    const taken = await atEast.get(`PUT /cases/${opened.id}/state`, caseView, {
      version: handed.version,
      body: { to: 'open', reason: 'Taken over' },
    });
    expect(taken.clinicIds).toEqual([east]);
    const transferOf = () => two.rows((tx) => tx.findBy(Transfer, { caseId: opened.id }));
    expect(await transferOf()).toMatchObject([{ fromClinicId: north, toClinicId: east, state: 'accepted' }]);

    const outside = await change(taken, { to: 'transferred', reason: 'Abroad', outsidePractice: 'A practice in Cork' });
    const kept = await change(outside, { to: 'open', reason: 'Stays after all' });
    expect(kept.clinicIds).toEqual([east]);
    expect((await transferOf()).map(({ state }) => state).sort()).toEqual(['accepted', 'withdrawn']);
  }, 60_000);

  it('closes a case only when its dentures are placed and nothing is left', async () => {
    const view = await aBookedCase();
    const close = { version: view.version, body: { to: 'closed', reason: 'Finished' } };
    const early = await two.desk.ask(`PUT /cases/${view.id}/state`, close);
    expect(early.status).toBe(409);
    expect(problem.parse(early.body).detail).toContain('dentures are not placed');
    await two.rows(async (tx) => {
      const treated = view.stages.filter(({ isReview }) => !isReview);
      await tx.update(Stage, { id: In(treated.map(({ id }) => id)) }, { state: 'passed' });
      await tx.update(LabStep, { caseId: view.id }, { state: 'finished' });
      const visits = treated.flatMap(({ appointmentId }) => appointmentId ?? []);
      await tx.update(Appointment, { id: In(visits) }, { state: 'completed' });
    });
    const withReviews = await two.desk.ask(`PUT /cases/${view.id}/state`, close);
    expect(withReviews.status).toBe(409);
    expect(problem.parse(withReviews.body).detail).toMatch(/\d visits and 0 laboratory steps are left/);
    await two.rows((tx) => tx.update(Appointment, { id: In(appointmentIds(view)) }, { state: 'completed' }));
    const closed = await change(view, { to: 'closed', reason: 'Finished' });
    expect(closed).toMatchObject({ state: 'closed', sentence: 'Closed. Recalls stay due.' });
  }, 60_000);

  it('gives held times back with the case', async () => {
    const patientId = (await patientOf(two.desk)).id;
    const opened = await two.desk.get('POST /cases', caseView, { body: await caseBody(two.desk, { patientId }) });
    const { offers } = (await two.desk.ask(`POST /cases/${opened.id}/offers`, { body: { count: 1 } })).body as {
      offers: { id: string }[];
    };
    const hold = { offerId: offers[0]?.id, kind: 'phone' };
    expect((await two.desk.ask(`POST /cases/${opened.id}/holds`, { body: hold })).status).toBe(201);
    const held = await two.desk.get(`GET /cases/${opened.id}`, caseView);
    expect(held.hold).not.toBeNull();
    expect(await timeTaken(held)).toBeGreaterThan(0);
    const abandoned = await change(held, { to: 'abandoned', reason: 'Wants no denture' });
    expect(abandoned.hold).toBeNull();
    expect(await timeTaken(held)).toBe(0);
    expect(await inOrganisation(two.api.db, two.organisationId, (tx) => tx.countBy(Appointment, { patientId }))).toBe(
      0,
    );
  }, 60_000);
});
