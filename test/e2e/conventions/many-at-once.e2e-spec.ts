import { problem } from '@archwright/contracts';
import { TreatmentPathVersion, inOrganisation, listOrganisations, uuidv7 } from '@archwright/records';
import { openDemoApi, type DemoApi } from '../practice/demo-api.js';

const REPEATS = 100;
const EDITORS = 50;

let api: DemoApi;
let cookie: string;
let clinician: string;
beforeAll(async () => {
  api = await openDemoApi();
  [cookie, clinician] = await Promise.all([api.signIn('desk'), api.signIn('chair')]);
}, 60_000);
afterAll(() => api.close());

interface Call {
  readonly method: 'POST' | 'PUT';
  readonly path: string;
  readonly body: object;
  readonly headers: Readonly<Record<string, string>>;
}

async function send({ method, path, body, headers }: Call): Promise<{ status: number; text: string }> {
  const answer = await fetch(`${api.url}${path}`, {
    method,
    headers: { cookie, 'content-type': 'application/json', ...headers },
    body: JSON.stringify(body),
  });
  return { status: answer.status, text: await answer.text() };
}

const aPatient = (familyName: string) => ({
  givenName: 'Pat',
  familyName,
  birthOn: '1950-01-02',
  zone: 'Europe/London',
});
const enter = (familyName: string, key: string) =>
  send({ method: 'POST', path: '/patients', body: aPatient(familyName), headers: { 'idempotency-key': key } });

async function createdId(path: string, body: object): Promise<string> {
  const { text } = await send({ method: 'POST', path, body, headers: { 'idempotency-key': uuidv7() } });
  return (JSON.parse(text) as { id: string }).id;
}

describe('one intent that is sent a hundred times at once', () => {
  it('has one effect; who is not told to wait gets the first answer, byte by byte', async () => {
    const key = uuidv7();
    const answers = await Promise.all(Array.from({ length: REPEATS }, () => enter('Repeated', key)));
    const done = answers.filter(({ status }) => status === 201);
    const waiting = answers.filter(({ status }) => status === 409).map(({ text }) => problem.parse(JSON.parse(text)));
    expect(done.length).toBeGreaterThan(0);
    expect(done.length + waiting.length).toBe(REPEATS);
    expect(new Set(done.map(({ text }) => text)).size).toBe(1);
    expect(waiting.every(({ code }) => code === 'platform.idempotency-key-conflict')).toBe(true);
    expect(await enter('Repeated', key)).toEqual(done[0]);

    const [organisationId = ''] = await listOrganisations(api.db);
    const [row] = await inOrganisation(api.db, organisationId, (tx) =>
      tx.query<{ count: number }[]>(
        `SELECT count(*)::integer AS count FROM patient_identity WHERE family_name = 'Repeated'`,
      ),
    );
    expect(row?.count).toBe(1);
  });

  it('is refused when the same key means something else', async () => {
    const key = uuidv7();
    await enter('First', key);
    const { status, text } = await enter('Second', key);
    expect([status, problem.parse(JSON.parse(text)).code]).toEqual([422, 'platform.idempotency-key-reused']);
  });
});

describe('fifty editors who all saw the same version', () => {
  const edit = (call: Omit<Call, 'headers'>, headers: Record<string, string> = {}) =>
    Promise.all(
      Array.from({ length: EDITORS }, () => send({ ...call, headers: { 'if-match': '"1"', ...headers } })),
    ).then((answers) => answers.map(({ status }) => status));
  const oneWins = [200, ...Array.from({ length: EDITORS - 1 }, () => 412)];

  it('change a patient once; the others are told that it was changed', async () => {
    const id = await createdId('/patients', aPatient('Edited'));
    const statuses = await edit({ method: 'PUT', path: `/patients/${id}`, body: aPatient('Changed') });
    expect(statuses.sort()).toEqual(oneWins);
  });

  it('change a case once', async () => {
    const [organisationId = ''] = await listOrganisations(api.db);
    const [path] = await inOrganisation(api.db, organisationId, (tx) =>
      tx.findBy(TreatmentPathVersion, { code: 'repair' }),
    );
    const practice = (await (await fetch(`${api.url}/practice`, { headers: { cookie } })).json()) as {
      clinics: { id: string }[];
    };
    const caseId = await createdId('/cases', {
      patientId: await createdId('/patients', aPatient('Treated')),
      arches: [{ arch: 'upper', pathVersionId: path?.id }],
      clinicIds: practice.clinics.map(({ id }) => id),
    });
    const consent = { consentOn: '2027-01-04', treatmentApprovedOn: null, medicinesAskedOn: null };
    const statuses = await edit(
      { method: 'PUT', path: `/cases/${caseId}/consent`, body: consent },
      { cookie: clinician },
    );
    expect(statuses.sort()).toEqual(oneWins);
  });
});
