import { patientPage, patientView, practiceView, problem } from '@archwright/contracts';
import { Consent, IdempotencyKey, Patient, Resource } from '@archwright/records';
import { openTwoPractices, patientBody, patientOf, type TwoPractices } from './cases-client.js';

describe('patients over HTTP', () => {
  let two: TwoPractices;
  beforeAll(async () => {
    two = await openTwoPractices();
  }, 60_000);
  afterAll(() => two.close());

  it('enters a patient whose time can be taken, and shows what was entered', async () => {
    const wishes = { weekdays: [1, 3], from: '09:00', to: '14:00', unavailableOn: ['2027-02-01'] };
    const body = patientBody({ mail: 'ada@example.test', reminderConsent: ['mail'], wishes, travelMinutes: 20 });
    const answer = await two.desk.ask('POST /patients', { body });
    expect(answer.status).toBe(201);
    const created = patientView.parse(answer.body);
    expect(answer.etag).toBe('"1"');
    expect(created).toMatchObject({ ...body, version: 1, phone: null, cases: [] });
    const shown = await two.clinician.ask(`GET /patients/${created.id}`);
    expect(shown).toMatchObject({ status: 200, etag: '"1"', body: created });
    const resource = await two.rows((tx) => tx.findOneBy(Resource, { id: created.id }));
    expect(resource).toMatchObject({ kind: 'patient', label: 'Patient' });
  });

  it('names every field that it refuses', async () => {
    const body = {
      familyName: '',
      birthOn: '1.5.44',
      zone: 'Europe/London',
      wishes: { weekdays: [9] },
      nickname: 'Ad',
    };
    const { status, body: refusal } = await two.desk.ask('POST /patients', { body });
    expect(status).toBe(400);
    const { errors } = problem.parse(refusal);
    expect(errors?.map(({ path }) => path).sort()).toEqual([
      '',
      'birthOn',
      'familyName',
      'givenName',
      'wishes.weekdays.0',
    ]);
    expect(errors?.find(({ path }) => path === 'birthOn')?.problem).toContain('2027-01-28');
    const elsewhere = await two.desk.ask('POST /patients', { body: patientBody({ zone: 'Europe/Nowhere' }) });
    expect(elsewhere.status).toBe(422);
    expect(problem.parse(elsewhere.body).detail).toContain('Europe/Nowhere');
  });

  it('finds by the beginning of the name, whatever the accents, page by page and each once', async () => {
    for (const givenName of ['Éva', 'Zoltán', 'Adam', 'Béla', 'Nora'])
      await patientOf(two.desk, { familyName: 'Szőke-Example', givenName });
    await patientOf(two.desk, { familyName: 'Szolnok-Example', givenName: 'Eva' });
    const seen: string[] = [];
    let next: string | null = null;
    do {
      const cursor: string = next === null ? '' : `&cursor=${next}`;
      const page = await two.desk.get(`GET /patients?q=szoke&limit=2${cursor}`, patientPage);
      seen.push(...page.items.map(({ givenName }) => givenName));
      next = page.next;
    } while (next !== null);
    expect(seen).toEqual(['Adam', 'Béla', 'Éva', 'Nora', 'Zoltán']);
    const narrow = await two.desk.get(`GET /patients?q=${encodeURIComponent('Szőke-Example, é')}`, patientPage);
    expect(narrow.items.map(({ givenName }) => givenName)).toEqual(['Éva']);
    expect((await two.desk.ask('GET /patients?cursor=made-up')).status).toBe(400);
  });

  it('finds by any word of the name, each once, and by the birth date', async () => {
    const name = { familyName: 'van der Example-Erle', givenName: 'Emmi', birthOn: '1938-02-28' };
    const { id } = await patientOf(two.desk, name);
    const found = async (query: string) =>
      (await two.desk.get(`GET /patients?${query}`, patientPage)).items.filter((each) => each.id === id);
    for (const q of ['emmi', 'emmi van', 'Erle', 'der example', 'erle, Emmi', 'e'])
      expect(await found(`limit=100&q=${encodeURIComponent(q)}`)).toHaveLength(1);
    expect(await found('birthOn=1938-02-28')).toHaveLength(1);
    expect(await found('birthOn=1938-02-28&q=emmi')).toHaveLength(1);
    expect(await found('birthOn=1938-03-01')).toEqual([]);
    expect(await found('birthOn=1938-03-01&q=emmi')).toEqual([]);
    expect((await two.desk.ask('GET /patients?birthOn=28.2.1938')).status).toBe(400);
  });

  it('changes a patient only on the version that the change is based on, and keeps a withdrawn consent', async () => {
    const created = await patientOf(two.desk, { familyName: 'Before-Example', reminderConsent: ['mail', 'phone'] });
    const body = patientBody({ familyName: 'After-Example', reminderConsent: ['phone'] });
    expect((await two.desk.ask(`PUT /patients/${created.id}`, { body })).status).toBe(428);
    const changed = await two.desk.ask(`PUT /patients/${created.id}`, { body, version: 1 });
    expect(changed).toMatchObject({ status: 200, etag: '"2"' });
    expect(patientView.parse(changed.body)).toMatchObject({ familyName: 'After-Example', reminderConsent: ['phone'] });
    expect((await two.desk.ask(`PUT /patients/${created.id}`, { body, version: 1 })).status).toBe(412);
    const found = (q: string) => two.desk.get(`GET /patients?q=${q}`, patientPage);
    expect((await found('after-example')).items.map(({ id }) => id)).toEqual([created.id]);
    expect((await found('before-example')).items).toEqual([]);
    expect((await found('ada%20before')).items).toEqual([]);
    const consents = await two.rows((tx) => tx.findBy(Consent, { patientId: created.id }));
    expect(consents.map(({ channel, withdrawnAt }) => [channel, withdrawnAt !== null]).sort()).toEqual([
      ['mail', true],
      ['phone', false],
    ]);
  });

  it('lets one of fifty editors of the same version through', async () => {
    const { id } = await patientOf(two.desk);
    const answers = await Promise.all(
      Array.from({ length: 50 }, (_, index) =>
        two.desk.ask(`PUT /patients/${id}`, { version: 1, body: patientBody({ travelMinutes: index }) }),
      ),
    );
    const statuses = answers.map(({ status }) => status);
    expect(statuses.filter((status) => status === 200)).toHaveLength(1);
    expect(statuses.filter((status) => status === 412)).toHaveLength(49);
    const winner = answers.findIndex(({ status }) => status === 200);
    expect(await two.desk.get(`GET /patients/${id}`, patientView)).toMatchObject({ version: 2, travelMinutes: winner });
  }, 60_000);

  it('enters a patient once, however often the call is repeated', async () => {
    const body = patientBody({ familyName: 'Once-Example' });
    const key = 'one-intent-of-the-desk';
    const first = await two.desk.ask('POST /patients', { body, key });
    const again = await two.desk.ask('POST /patients', { body, key });
    expect(again).toEqual(first);
    const { items } = await two.desk.get('GET /patients?q=once-example', patientPage);
    expect(items).toHaveLength(1);
    const other = await two.desk.ask('POST /patients', { body: patientBody({ familyName: 'Other' }), key });
    expect(other.status).toBe(422);
    expect((await two.desk.ask('POST /patients', { body, key: null })).status).toBe(400);
    expect(await two.rows((tx) => tx.countBy(IdempotencyKey, { key }))).toBe(1);
  });

  it('is unknown to another practice, to another clinic, and closed to laboratory and strangers', async () => {
    const { clinics } = await two.desk.get('GET /practice', practiceView);
    const [north, east] = clinics;
    if (north === undefined || east === undefined) throw new Error('The practice has two clinics.');
    const atNorth = await two.deskAt(north.id);
    const atEast = await two.deskAt(east.id);
    const { id } = await patientOf(atNorth, { familyName: 'North-Example' });
    const body = patientBody();
    for (const outsider of [two.stranger, atEast]) {
      expect((await outsider.ask(`GET /patients/${id}`)).status).toBe(404);
      expect((await outsider.ask(`PUT /patients/${id}`, { body, version: 1 })).status).toBe(404);
      expect((await outsider.get('GET /patients?q=north-example', patientPage)).items).toEqual([]);
    }
    expect((await two.desk.get('GET /patients?q=north-example', patientPage)).items).toHaveLength(1);
    expect((await two.bench.ask(`GET /patients/${id}`)).status).toBe(403);
    expect((await two.clinician.ask('POST /patients', { body })).status).toBe(403);
    expect((await two.desk.ask('GET /patients/not-an-id')).status).toBe(400);
    const signedOut = await fetch(`${two.api.url}/patients/${id}`);
    expect(signedOut.status).toBe(401);
    expect(await two.rows((tx) => tx.findOneBy(Patient, { id }))).toMatchObject({ version: 1 });
  });
});
