import {
  casePage,
  caseSummary,
  caseView,
  labCasePage,
  labCaseView,
  patientView,
  practiceView,
  problem,
} from '@archwright/contracts';
import { combineArches, shippedPaths } from '@archwright/protocol';
import {
  AuditEntry,
  CaseArch,
  LabStep,
  Laboratory,
  Patient,
  TreatmentCase,
  TreatmentPathWithdrawal,
  WorkCentre,
  uuidv7,
} from '@archwright/records';
import { booked, caseBody, caseOf, openTwoPractices, patientOf, type TwoPractices } from './cases-client.js';

const pathOf = (code: string) => shippedPaths.find((path) => path.code === code);

describe('cases over HTTP', () => {
  let two: TwoPractices;
  beforeAll(async () => {
    two = await openTwoPractices();
  }, 60_000);
  afterAll(() => two.close());

  it('opens a case with every stage and laboratory step of its paths, and says what comes next', async () => {
    const patient = await patientOf(two.desk, { phone: '+44 20 7946 0011' });
    const body = await caseBody(two.desk, { patientId: patient.id });
    const answer = await two.desk.ask('POST /cases', { body });
    expect(answer).toMatchObject({ status: 201, etag: '"1"' });
    const opened = caseView.parse(answer.body);
    const conventional = pathOf('conventional');
    const chain = combineArches({ ...(conventional && { upper: conventional, lower: conventional }) });
    expect(opened.stages.map(({ code }) => code)).toEqual(chain.stages.map(({ code }) => code));
    expect(opened.labSteps.map(({ code }) => code)).toEqual(chain.steps.map(({ code }) => code));
    expect(new Set(opened.stages.map(({ state }) => state))).toEqual(new Set(['waiting']));
    expect(opened).toMatchObject({
      number: expect.stringMatching(/^27-\d{4}$/) as string,
      title: 'Upper and lower: Complete denture, conventional, five visits',
      patient: { name: 'Ada Mole-Example', birthOn: '1944-05-01', phone: '+44 20 7946 0011' },
      zone: 'Europe/London',
      deliveryOn: null,
      plannable: true,
      transports: [],
      hold: null,
    });
    expect(opened.sentence).toContain(`Not booked: "${chain.stages[0]?.title ?? ''}" and what follows.`);
    expect(opened.events).toMatchObject([
      { kind: 'case-opened', sentence: 'The case was opened.', by: 'Robin Desk-Example' },
    ]);
    const audit = await two.rows((tx) => tx.findBy(AuditEntry, { subjectId: opened.id }));
    expect(audit).toMatchObject([{ action: 'case-opened', subjectKind: 'case' }]);
    const { cases } = await two.desk.get(`GET /patients/${patient.id}`, patientView);
    expect(cases).toEqual([{ id: opened.id, number: opened.number, state: 'open', title: opened.title }]);
  });

  it('joins different paths of the two arches, and refuses what cannot be one case', async () => {
    const { paths } = await two.desk.get('GET /practice', practiceView);
    const versionOf = (code: string) => paths.find((path) => path.code === code)?.versionId ?? '';
    const overdenture = paths.find(({ code }) => code.includes('overdenture'))?.code ?? '';
    const lower = { arch: 'lower', pathVersionId: versionOf(overdenture) };
    const upper = { arch: 'upper', pathVersionId: versionOf('conventional') };
    const opened = await caseOf(two.desk, { arches: [upper, lower] });
    expect(opened.title).toMatch(/^Upper: .*; Lower: /);
    expect(opened.stages.some(({ arches }) => arches.length === 2)).toBe(true);
    const patientId = (await patientOf(two.desk)).id;
    const twice = await two.desk.ask('POST /cases', {
      body: await caseBody(two.desk, { patientId, arches: [upper, upper] }),
    });
    expect(twice.status).toBe(400);
    expect(problem.parse(twice.body).errors).toMatchObject([{ path: 'arches', problem: 'each arch once' }]);
    await two.rows(async (tx) => {
      await tx.insert(TreatmentPathWithdrawal, { id: uuidv7(), pathVersionId: versionOf('repair') });
    });
    const withdrawn = [{ arch: 'upper', pathVersionId: versionOf('repair') }];
    const late = await two.desk.ask('POST /cases', {
      body: await caseBody(two.desk, { patientId, arches: withdrawn }),
    });
    expect(late.status).toBe(409);
    expect(problem.parse(late.body).detail).toContain('withdrawn');
  });

  it('refuses patients, clinics, clinicians, paths and parents that are not there, and leaves no number out', async () => {
    const patientId = (await patientOf(two.desk)).id;
    const good = await caseBody(two.desk, { patientId });
    const before = await caseOf(two.desk);
    const unknown = uuidv7();
    const wrong: Record<string, unknown>[] = [
      { patientId: unknown },
      { clinicIds: [unknown] },
      { clinicianId: unknown },
      { parentCaseId: unknown },
      { parentCaseId: before.id },
      { arches: [{ arch: 'upper', pathVersionId: unknown }] },
    ];
    for (const part of wrong) {
      const { status } = await two.desk.ask('POST /cases', { body: { ...good, ...part } });
      expect([part, status]).toEqual([part, 404]);
    }
    await two.rows((tx) => tx.update(Patient, { id: patientId }, { diedOn: '2027-01-01' }));
    expect((await two.desk.ask('POST /cases', { body: good })).status).toBe(409);
    const after = await caseOf(two.desk);
    expect(Number(after.number.slice(3))).toBe(Number(before.number.slice(3)) + 1);
  });

  it('opens one case for repeats of one call, even at once', async () => {
    const patientId = (await patientOf(two.desk)).id;
    const body = await caseBody(two.desk, { patientId });
    const key = 'one-case-for-this-patient';
    const answers = await Promise.all(Array.from({ length: 8 }, () => two.desk.ask('POST /cases', { body, key })));
    expect(new Set(answers.map(({ status }) => status))).toEqual(
      new Set(answers.some(({ status }) => status === 409) ? [201, 409] : [201]),
    );
    const again = await two.desk.ask('POST /cases', { body, key });
    const ids = new Set(
      [...answers, again].flatMap(({ status, body: view }) => (status === 201 ? caseView.parse(view).id : [])),
    );
    expect(ids.size).toBe(1);
    expect(await two.rows((tx) => tx.countBy(TreatmentCase, { patientId }))).toBe(1);
  });

  it('starts an enquiry with its examination only, and lays out what is decided on', async () => {
    const enquiry = await caseOf(two.desk, { enquiry: true });
    expect(enquiry).toMatchObject({ state: 'enquiry', labSteps: [], stages: [{ code: 'V1' }] });
    expect(enquiry.sentence).toContain('Enquiry: nothing is booked yet.');
    const digital = await caseBody(two.desk, {}, 'digital-printed-bases');
    const opened = await two.clinician.get(`PUT /cases/${enquiry.id}/state`, caseView, {
      version: enquiry.version,
      body: {
        to: 'open',
        reason: 'Decided after the examination.',
        arches: digital.arches,
        wishes: { weekdays: [2], from: '09:00', to: null, unavailableOn: [] },
      },
    });
    expect(opened.wishes).toMatchObject({ weekdays: [2], from: '09:00' });
    const path = pathOf('digital-printed-bases');
    expect(opened.stages.map(({ code }) => code)).toEqual(path?.visits.map(({ code }) => code));
    expect(opened.stages[0]?.id).toBe(enquiry.stages[0]?.id);
    expect(opened.labSteps.length).toBeGreaterThan(0);
    const arches = await two.rows((tx) => tx.findBy(CaseArch, { caseId: enquiry.id }));
    expect(arches.map(({ provisional }) => provisional)).toEqual([false, false]);
    const late = await two.clinician.ask(`PUT /cases/${enquiry.id}/state`, {
      version: opened.version,
      body: { to: 'paused', reason: 'Illness.', arches: digital.arches, clinicianId: null },
    });
    const errors = [{ path: 'arches' }, { path: 'clinicianId' }];
    expect(problem.parse(late.body)).toMatchObject({ status: 400, errors });
  });

  it('lists the newest first, found by number, name and state, page by page', async () => {
    const patientId = (await patientOf(two.desk, { familyName: 'Listed-Example' })).id;
    const body = await caseBody(two.desk, { patientId });
    const opened = [];
    for (const enquiry of [false, true, false])
      opened.push(await two.desk.get('POST /cases', caseView, { body: { ...body, enquiry } }));
    const numbers = opened.map(({ number }) => number).reverse();
    const first = await two.desk.get('GET /cases?q=listed-ex&limit=2', casePage);
    const rest = await two.desk.get(`GET /cases?q=listed-ex&limit=2&cursor=${first.next ?? ''}`, casePage);
    expect([...first.items, ...rest.items].map(({ number }) => number)).toEqual(numbers);
    expect(rest.next).toBeNull();
    const enquiries = await two.desk.get('GET /cases?q=listed-example&state=enquiry', casePage);
    expect(enquiries.items.map(({ number }) => number)).toEqual([numbers[1]]);
    const byNumber = await two.desk.get(`GET /cases?q=${numbers[0] ?? ''}`, casePage);
    expect(byNumber.items).toHaveLength(1);
    expect(byNumber.items[0]).toEqual(caseSummary.parse(opened[2]));
  });

  it('shows the next visit and the placement once booked', async () => {
    const opened = await caseOf(two.desk);
    const view = await booked(two.desk, opened.id);
    const [first] = view.stages;
    const delivery = view.stages.find(({ isDelivery }) => isDelivery);
    expect(view.deliveryOn).toBe(delivery?.startsAt?.slice(0, 10));
    expect(first).toMatchObject({ state: 'planned', appointmentState: 'booked' });
    expect(view.plannable).toBe(false);
    expect(view.transports.map(({ direction }) => direction)).toEqual(expect.arrayContaining(['to-lab', 'to-clinic']));
    expect(view.sentence).toMatch(
      /^Next: Examination.*, \w+day \d+ January 2027 at \d\d:\d\d, (North|East) clinic\. Placement on \w+day \d+ \w+ 2027\.$/,
    );
    expect(view.labSteps.every(({ startsAt, placeLabel }) => startsAt !== null && placeLabel !== null)).toBe(true);
    expect(view.events.map(({ sentence }) => sentence).join(' ')).toContain('visits were booked');
  });

  it('shows a laboratory its own cases by number, and nobody’s identity', async () => {
    const patient = { familyName: 'Secret-Example', phone: '+44 20 7946 0099' };
    const patientId = (await patientOf(two.desk, patient)).id;
    const opened = await two.desk.get('POST /cases', caseView, { body: await caseBody(two.desk, { patientId }) });
    expect((await two.bench.ask(`GET /cases/${opened.id}`)).status).toBe(404);
    await two.rows(async (tx) => {
      const { id: laboratoryId } = await tx.findOneByOrFail(Laboratory, {});
      const { id: workCentreId } = await tx.findOneByOrFail(WorkCentre, { laboratoryId });
      await tx.update(LabStep, { caseId: opened.id }, { laboratoryId, workCentreId });
    });
    const shown = await two.bench.ask(`GET /cases/${opened.id}`);
    expect(labCaseView.strict().parse(shown.body)).toMatchObject({ number: opened.number, title: opened.title });
    const listed = await two.bench.ask(`GET /cases?q=${opened.number}`);
    expect(labCasePage.parse(listed.body).items).toMatchObject([{ id: opened.id }]);
    for (const { body } of [shown, listed]) {
      const text = JSON.stringify(body);
      for (const part of ['Ada', 'Secret', '1944', '7946', patientId]) expect(text).not.toContain(part);
    }
    expect((await two.bench.get('GET /cases?q=secret-example', labCasePage)).items).toEqual([]);
  });

  it('dates consent by a clinician, on the version seen, never ahead', async () => {
    const { id } = await caseOf(two.desk);
    const body = { consentOn: '2027-01-04', treatmentApprovedOn: null, medicinesAskedOn: '2027-01-03' };
    expect((await two.desk.ask(`PUT /cases/${id}/consent`, { body, version: 1 })).status).toBe(403);
    expect((await two.clinician.ask(`PUT /cases/${id}/consent`, { body })).status).toBe(428);
    const ahead = await two.clinician.ask(`PUT /cases/${id}/consent`, {
      body: { ...body, consentOn: '2027-01-05' },
      version: 1,
    });
    expect(problem.parse(ahead.body)).toMatchObject({
      status: 400,
      errors: [{ path: 'consentOn', accepted: 'a date up to 2027-01-04' }],
    });
    const dated = await two.clinician.ask(`PUT /cases/${id}/consent`, { body, version: 1 });
    expect(dated).toMatchObject({ status: 200, etag: '"2"', body });
    expect((await two.clinician.ask(`PUT /cases/${id}/consent`, { body, version: 1 })).status).toBe(412);
  });

  it('lets one of fifty editors of the same version through', async () => {
    const { id } = await caseOf(two.desk);
    const body = { to: 'paused', reason: 'Illness.', reviewOn: '2027-03-01' };
    const answers = await Promise.all(
      Array.from({ length: 50 }, () => two.desk.ask(`PUT /cases/${id}/state`, { version: 1, body })),
    );
    const statuses = answers.map(({ status }) => status);
    expect(statuses.filter((status) => status === 200)).toHaveLength(1);
    expect(statuses.filter((status) => status === 412)).toHaveLength(49);
    const view = await two.desk.get(`GET /cases/${id}`, caseView);
    expect(view).toMatchObject({ version: 2, state: 'paused' });
    expect(view.sentence).toBe('Paused: Illness. To be looked at again on Monday 1 March 2027.');
    expect(view.events.filter(({ kind }) => kind === 'state-changed')).toHaveLength(1);
  }, 60_000);

  it('is unknown to another practice and to clinics that it is not of', async () => {
    const { clinics } = await two.desk.get('GET /practice', practiceView);
    const [north, east] = clinics.map(({ id }) => id);
    const { id, number } = await caseOf(two.desk, { clinicIds: [north] });
    const atEast = await two.deskAt(east ?? '');
    const change = { body: { to: 'paused', reason: 'Illness.' }, version: 1 };
    for (const outsider of [two.stranger, atEast]) {
      expect((await outsider.ask(`GET /cases/${id}`)).status).toBe(404);
      expect((await outsider.ask(`GET /cases/${id}/state-effects?to=paused`)).status).toBe(404);
      expect((await outsider.ask(`PUT /cases/${id}/state`, change)).status).toBe(404);
      expect((await outsider.get(`GET /cases?q=${number}`, casePage)).items.filter((item) => item.id === id)).toEqual(
        [],
      );
    }
    const patientId = (await patientOf(two.stranger)).id;
    const theirs = await two.stranger.ask('POST /cases', { body: await caseBody(two.desk, { patientId }) });
    expect(theirs.status).toBe(404);
  });
});
