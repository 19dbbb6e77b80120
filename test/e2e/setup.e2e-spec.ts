import {
  practiceView,
  problem,
  setupEntry,
  setupPreview,
  setupView,
  type CaseView,
  type SetupEntry,
  type SetupKind,
  type SetupRecord,
} from '@archwright/contracts';
import { LabStep } from '@archwright/records';
import { In } from 'typeorm';
import { Person, addPerson, booked, caseOf, openTwoPractices, type TwoPractices } from './cases-client.js';

type RecordOf<Kind extends SetupKind> = Extract<SetupRecord, { kind: Kind }>;

let two: TwoPractices;
let manager: Person;
let view: CaseView;
beforeAll(async () => {
  two = await openTwoPractices();
  manager = new Person(two.api.url, await two.api.signIn('manager'));
  view = await booked(two.desk, (await caseOf(two.desk)).id);
}, 90_000);
afterAll(() => two.close());

const setup = () => manager.get('GET /setup', setupView);

/** The first record of a kind that fits. */
async function entryOf<Kind extends SetupKind>(
  kind: Kind,
  fits: (record: RecordOf<Kind>, id: string) => boolean = () => true,
): Promise<Omit<SetupEntry, 'record'> & { record: RecordOf<Kind> }> {
  for (const { record, ...entry } of (await setup()).entries) {
    if (record.kind === kind && fits(record as RecordOf<Kind>, entry.id))
      return { ...entry, record: record as RecordOf<Kind> };
  }
  throw new Error(`There is no such ${kind}.`);
}

const preview = (change: object) => manager.get('POST /setup/preview', setupPreview, { body: change });
const add = (record: object) => manager.get('POST /setup/records', setupEntry, { body: record });
const replace = ({ id, version }: SetupEntry, record: object) =>
  manager.ask(`PUT /setup/records/${id}`, { version, body: record });

async function firstVisit(): Promise<{ clinicId: string; startsAt: string; appointmentId: string | null }> {
  const visit = view.stages.find(({ startsAt }) => startsAt !== null);
  if (visit?.startsAt == null) throw new Error('The case is booked.');
  const clinic = await entryOf('clinic', ({ name }) => name === visit.clinicName);
  return { clinicId: clinic.id, startsAt: visit.startsAt, appointmentId: visit.appointmentId };
}

describe('what the practice consists of', () => {
  it('is listed whole, with the words by which paths ask for it', async () => {
    const { entries, asked } = await setup();
    const kinds = new Set(entries.map(({ record }) => record.kind));
    expect([...kinds].sort()).toEqual([
      'chair',
      'clinic',
      'courier',
      'device',
      'kit',
      'laboratory',
      'person',
      'work-centre',
    ]);
    expect(asked.skills).toContain('complete-dentures');
    expect(asked.workCentres).toContain('wax');
    expect((await entryOf('courier')).record.toLab[0]?.rrule).toBe('FREQ=WEEKLY;BYDAY=MO,TU,WE,TH,FR');
  });

  it('says which part of a rule is wrong and what would be accepted; nothing is saved', async () => {
    const clinic = await entryOf('clinic');
    const [hours] = clinic.record.hours;
    const body = { ...clinic.record, zone: 'Europe/Nowhere', hours: [{ ...hours, rrule: 'FREQ=WEEKLY;BYDAY=XX' }] };
    const { status, body: refusal } = await replace(clinic, body);
    expect(status).toBe(400);
    const said = (problem.parse(refusal).errors ?? []).map((each) => [each.path, each.problem]);
    expect(said).toEqual([
      ['zone', 'a time zone such as Europe/London'],
      ['hours.0.rrule', expect.stringContaining('Accepted: MO, TU, WE, TH, FR, SA, SU')],
    ]);
    expect(await entryOf('clinic')).toEqual(clinic);
  });

  it('is changed once by two who saw the same version', async () => {
    const chair = await entryOf('chair');
    const renamed = { ...chair.record, label: 'Chair by the window' };
    const answers = await Promise.all([replace(chair, renamed), replace(chair, renamed)]);
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 412]);
    const { clinics } = await two.desk.get('GET /practice', practiceView);
    expect(clinics.flatMap(({ chairs }) => chairs.map(({ label }) => label))).toContain('Chair by the window');
  });

  it('keeps what bookings rest on: a chair stays at its clinic, and has a name of its own there', async () => {
    const chair = await entryOf('chair');
    const other = await entryOf('clinic', (_, id) => id !== chair.record.clinicId);
    expect((await replace(chair, { ...chair.record, clinicId: other.id })).status).toBe(422);
    const namesake = { ...chair.record, wheelchairRoom: false };
    const { status, body } = await manager.ask('POST /setup/records', { body: namesake });
    expect([status, problem.parse(body).code]).toEqual([422, 'casework.setup-refused']);
  });
});

describe('a change', () => {
  it('shows the visits that it leaves outside hours before it is made, and changes nothing by showing them', async () => {
    const visit = await firstVisit();
    const clinic = await entryOf('clinic', (_, id) => id === visit.clinicId);
    const before = await setup();
    const shown = await preview({ do: 'replace', id: clinic.id, record: { ...clinic.record, hours: [] } });
    const named = shown.stranded.find(({ appointmentId }) => appointmentId === visit.appointmentId);
    expect(named).toMatchObject({ caseNumber: view.number, why: `${clinic.record.name} is not open for all of it.` });
    expect(await setup()).toEqual(before);
    expect(await preview({ do: 'replace', id: clinic.id, record: clinic.record })).toMatchObject({ stranded: [] });
  });

  it('of a laboratory’s hours or a courier’s timetable shows the work and the ways that it leaves behind', async () => {
    const laboratory = await entryOf('laboratory');
    const work = await preview({ do: 'replace', id: laboratory.id, record: { ...laboratory.record, hours: [] } });
    expect(new Set(work.stranded.map(({ kind }) => kind))).toEqual(new Set(['lab-work']));
    expect(work.stranded.every(({ patientName }) => patientName === null)).toBe(true);
    const couriers = (await setup()).entries.filter(({ record }) => record.kind === 'courier');
    const ways = await Promise.all(couriers.map(({ id }) => preview({ do: 'retire', id })));
    expect(ways.flatMap(({ stranded }) => stranded.map(({ why }) => why))).toContain(
      'Its courier does not run any more.',
    );
  });

  it('takes a person out of use for new cases, and back', async () => {
    const person = await entryOf('person', ({ role }) => role === 'clinician');
    const path = `PUT /setup/records/${person.id}/retirement`;
    const names = async () =>
      (await two.desk.get('GET /practice', practiceView)).clinics.flatMap(({ clinicians }) =>
        clinicians.map(({ name }) => name),
      );
    const retired = await manager.get(path, setupEntry, { version: person.version, body: { isRetired: true } });
    expect(retired).toMatchObject({ isRetired: true, version: person.version + 1 });
    expect(await names()).not.toContain(person.record.name);
    await manager.get(path, setupEntry, { version: retired.version, body: { isRetired: false } });
    expect(await names()).toContain(person.record.name);
  });

  it('adds a clinic that its founder answers for, with a chair and a person who works there', async () => {
    const hours = [{ startOn: '2027-01-04', startsLocal: '09:00', rrule: 'FREQ=WEEKLY;BYDAY=MO', minutes: 480 }];
    const about = { zone: 'Europe/Berlin', address: '3 Specimen Way', phone: null };
    const clinic = await add({ kind: 'clinic', name: 'West clinic', ...about, hours });
    await add({ kind: 'chair', clinicId: clinic.id, label: 'Chair 1', wheelchairRoom: false });
    const person = { kind: 'person', role: 'clinician', name: 'Dr West-Example', skills: ['complete-dentures'] };
    await add({ ...person, workplaces: [{ clinicId: clinic.id, hours }] });
    const { clinics } = await manager.get('GET /practice', practiceView);
    expect(clinics.find(({ id }) => id === clinic.id)).toMatchObject({
      zone: 'Europe/Berlin',
      chairs: [{ label: 'Chair 1' }],
      clinicians: [{ name: 'Dr West-Example' }],
    });
  });

  it('gives a work centre more places or fewer', async () => {
    const wax = await entryOf('work-centre', ({ code }) => code === 'wax');
    const places = async (n: number, from: SetupEntry) =>
      setupEntry.parse((await replace(from, { ...wax.record, places: n })).body);
    const more = await places(3, wax);
    const fewer = await places(1, more);
    expect([more.record, fewer.record]).toMatchObject([{ places: 3 }, { places: 1 }]);
    const { laboratories } = await manager.get('GET /practice', practiceView);
    expect(laboratories[0]?.workCentres.find(({ code }) => code === 'wax')?.places).toBe(1);
  });
});

describe('a person who works at several clinics', () => {
  it('goes out of sight of a manager who takes them off their own clinic, and stays at the other one', async () => {
    const [here, there] = (await setup()).entries.filter(({ record }) => record.kind === 'clinic').map(({ id }) => id);
    const workplaces = [here, there].map((clinicId) => ({ clinicId, hours: [] }));
    const person = { kind: 'person', role: 'assistant', name: 'Two Places-Example', skills: [], workplaces };
    const { id, version } = await add(person);
    const local = await addPerson(two.api, two.organisationId, { role: 'manager', clinicIds: [here ?? ''] });
    const path = `PUT /setup/records/${id}`;
    const answer = await local.ask(path, { version, body: { ...person, workplaces: [] } });
    expect(answer).toMatchObject({ status: 200, body: { version: version + 1, record: { workplaces: [] } } });
    expect((await local.get('GET /setup', setupView)).entries.some((entry) => entry.id === id)).toBe(false);
    const kept = (await setup()).entries.find((entry) => entry.id === id)?.record;
    expect(kept).toMatchObject({ workplaces: [{ clinicId: there }] });
  });
});

describe('what stands on something else', () => {
  it('is refused when that is of another kind or nobody’s', async () => {
    const chair = await entryOf('chair');
    const kit = { kind: 'kit', clinicId: chair.id, code: 'tracing-set', label: 'Set', reprocessingMinutes: 10 };
    expect((await manager.ask('POST /setup/records', { body: kit })).status).toBe(404);
    const day = { fromOn: '2027-03-01', lastOn: '2027-03-01', fromLocal: null, untilLocal: null, reason: 'x' };
    const closure = { kind: 'closure', of: { kind: 'laboratory', id: chair.id }, ...day };
    expect((await manager.ask('POST /setup/records', { body: closure })).status).toBe(404);
  });
});

describe('a closure', () => {
  it('shows whom it meets, keeps the time free, and can be taken back', async () => {
    const visit = await firstVisit();
    const on = visit.startsAt.slice(0, 10);
    const of = { kind: 'clinic', id: visit.clinicId };
    const record = {
      kind: 'closure',
      of,
      fromOn: on,
      lastOn: on,
      fromLocal: null,
      untilLocal: null,
      reason: 'Training',
    };
    const shown = await preview({ do: 'add', record });
    expect(shown.stranded.map(({ appointmentId }) => appointmentId)).toContain(visit.appointmentId);
    const closure = await add(record);
    expect(closure.record).toEqual(record);
    const sooner = { ...record, fromLocal: '17:00', untilLocal: '17:30' };
    expect(setupEntry.parse((await replace(closure, sooner)).body).record).toEqual(sooner);
    expect((await manager.ask(`DELETE /setup/closures/${closure.id}`)).status).toBe(204);
    const { entries } = await setup();
    expect(entries.some(({ id }) => id === closure.id)).toBe(false);
  });

  it('of a bench place is listed by its name, shows the work that it meets, and can be changed and taken back', async () => {
    const { benchPlaces } = await setup();
    const inUse = benchPlaces.filter(({ isRetired }) => !isRetired).map(({ id }) => id);
    const steps = await two.rows((tx) => tx.findBy(LabStep, { caseId: view.id, placeId: In(inUse), state: 'planned' }));
    const [stretch] = steps.flatMap(({ placeId, segments }) =>
      segments.filter(({ kind }) => kind === 'hands-on').map(({ startsAt }) => ({ placeId, startsAt })),
    );
    const on = stretch?.startsAt.slice(0, 10);
    const of = { kind: 'resource', id: stretch?.placeId };
    const record = {
      kind: 'closure',
      of,
      fromOn: on,
      lastOn: on,
      fromLocal: null,
      untilLocal: null,
      reason: 'Service',
    };
    const { stranded } = await preview({ do: 'add', record });
    expect(stranded.map(({ caseId, why }) => [caseId, why])).toContainEqual([
      view.id,
      'Its bench place is closed then.',
    ]);
    const closure = await add(record);
    expect((await setup()).entries.find(({ id }) => id === closure.id)?.record).toEqual(record);
    const changed = await replace(closure, { ...record, reason: 'Repair' });
    expect(changed).toMatchObject({ status: 200, body: { record: { reason: 'Repair' } } });
    expect((await manager.ask(`DELETE /setup/closures/${closure.id}`)).status).toBe(204);
  });

  it('that ends before it begins is refused at its field', async () => {
    const of = { kind: 'clinic', id: (await firstVisit()).clinicId };
    const times = { fromOn: '2027-03-02', lastOn: '2027-03-01', fromLocal: null, untilLocal: null };
    const { status, body } = await manager.ask('POST /setup/records', {
      body: { kind: 'closure', of, ...times, reason: 'x' },
    });
    expect([status, problem.parse(body).errors?.[0]?.path]).toEqual([400, 'lastOn']);
  });
});
