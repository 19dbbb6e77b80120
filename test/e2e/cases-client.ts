import { randomUUID } from 'node:crypto';
import { hashPassword } from '@archwright/casework';
import { offersView, practiceView, patientView, caseView, holdView, type CaseView } from '@archwright/contracts';
import {
  Clinic,
  Directory,
  Organisation,
  UserAccount,
  inOrganisation,
  listOrganisations,
  uuidv7,
} from '@archwright/records';
import type { DataSource, EntityManager } from 'typeorm';
import { z } from 'zod';
import { cookieOf, openDemoApi, postSession, type DemoApi } from './practice/demo-api.js';

/** Of everybody who is written here. */
export const PASSWORD = 'a-password-of-the-tests';

export interface Answer {
  readonly status: number;
  readonly etag: string | null;
  readonly body: unknown;
}

export interface Ask {
  readonly body?: unknown;
  readonly version?: number;
  /** Drawn anew when left out; null leaves the header out. */
  readonly key?: string | null;
}

const versioned = z.object({ version: z.int() });

/** Whatever shows a version shows it as the entity tag as well, which the next change names. */
function tagChecked(call: string, answer: Answer): Answer {
  const shown = versioned.safeParse(answer.body).data;
  if (answer.status < 300 && shown !== undefined && answer.etag !== `"${String(shown.version)}"`)
    throw new Error(`${call} answered version ${String(shown.version)} under the tag ${String(answer.etag)}.`);
  return answer;
}

/** One signed-in person; answers come as they are, refusals included. */
export class Person {
  constructor(
    private readonly url: string,
    private readonly cookie: string,
  ) {}

  async ask(call: string, { body, version, key = randomUUID() }: Ask = {}): Promise<Answer> {
    const [method = 'GET', path = ''] = call.split(' ');
    const headers: Record<string, string> = { cookie: this.cookie };
    if (body !== undefined) headers['content-type'] = 'application/json';
    if (method === 'POST' && key !== null) headers['idempotency-key'] = key;
    if (version !== undefined) headers['if-match'] = `"${String(version)}"`;
    const response = await fetch(`${this.url}${path}`, {
      method,
      headers,
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    });
    const text = await response.text();
    const answered = text === '' ? null : (JSON.parse(text) as unknown);
    return tagChecked(call, { status: response.status, etag: response.headers.get('etag'), body: answered });
  }

  /** An answer that must be a success, by its contract. */
  async get<Schema extends z.ZodType>(call: string, schema: Schema, ask: Ask = {}): Promise<z.output<Schema>> {
    const { status, body } = await this.ask(call, ask);
    if (status >= 300) throw new Error(`${call} was refused with ${String(status)}: ${JSON.stringify(body)}`);
    return schema.parse(body);
  }
}

/** The demonstration practice, its people, and a practice next door. */
export interface TwoPractices {
  readonly api: DemoApi;
  readonly organisationId: string;
  readonly desk: Person;
  readonly clinician: Person;
  readonly bench: Person;
  /** Front desk of the other practice. */
  readonly stranger: Person;
  /** A front desk of the demonstration practice that works at one clinic only. */
  deskAt(clinicId: string): Promise<Person>;
  rows<Result>(work: (tx: EntityManager) => Promise<Result>): Promise<Result>;
  close(): Promise<void>;
}

export async function openTwoPractices(): Promise<TwoPractices> {
  const api = await openDemoApi();
  const [organisationId = ''] = await listOrganisations(api.db);
  const as = async (name: string) => new Person(api.url, await api.signIn(name));
  const deskOf = (organisation: string, clinicIds: readonly string[]): Promise<Person> =>
    addPerson(api, organisation, { role: 'front-desk', clinicIds });
  const neighbour = await addOrganisation(api);
  return {
    api,
    organisationId,
    desk: await as('desk'),
    clinician: await as('chair'),
    bench: await as('bench'),
    stranger: await deskOf(neighbour.organisationId, [neighbour.clinicId]),
    deskAt: (clinicId) => deskOf(organisationId, [clinicId]),
    rows: (work) => inOrganisation(api.db, organisationId, work),
    close: () => api.close(),
  };
}

async function addOrganisation({ db }: DemoApi): Promise<{ organisationId: string; clinicId: string }> {
  const organisationId = uuidv7();
  const clinicId = uuidv7();
  const settings = {
    reminderLeadMinutes: { mail: [2880], phone: [] },
    quietHours: { from: '20:00', to: '08:00' },
    phoneHoldMinutes: 15,
    provisionalHoldMinutes: 2880,
  };
  await inOrganisation(db, organisationId, async (tx) => {
    await tx.insert(Organisation, { id: organisationId, name: 'Next door', kind: 'practice', locale: 'en', settings });
    await tx.insert(Directory, { id: uuidv7(), kind: 'organisation', organisationId });
    await tx.insert(Clinic, { id: clinicId, name: 'Next door', zone: 'Europe/London', address: 'Street 1' });
  });
  return { organisationId, clinicId };
}

/** Somebody with an account of their own, signed in. */
export async function addPerson({ db, url }: DemoApi, organisationId: string, work: Work): Promise<Person> {
  const signInName = await writeAccount(db, organisationId, work);
  return new Person(url, cookieOf(await postSession(url, { signInName, password: PASSWORD })));
}

/** An account that nobody has signed in to yet; answers its sign-in name. */
export async function writeAccount(
  db: DataSource,
  organisationId: string,
  { role, clinicIds = [], laboratoryIds = [] }: Work,
): Promise<string> {
  const userId = uuidv7();
  const signInName = `${userId}@example.test`;
  const passwordHash = await hashPassword(PASSWORD);
  await inOrganisation(db, organisationId, async (tx) => {
    await tx.insert(UserAccount, {
      id: userId,
      name: `A ${role}`,
      role,
      passwordHash,
      locale: 'en',
      clinicIds: [...clinicIds],
      laboratoryIds: [...laboratoryIds],
    });
    await tx.insert(Directory, { id: uuidv7(), kind: 'sign-in', organisationId, signInName, userId });
  });
  return signInName;
}

interface Work {
  readonly role: UserAccount['role'];
  readonly clinicIds?: readonly string[];
  readonly laboratoryIds?: readonly string[];
}

export const patientBody = (over: Record<string, unknown> = {}) => ({
  givenName: 'Ada',
  familyName: 'Mole-Example',
  birthOn: '1944-05-01',
  zone: 'Europe/London',
  ...over,
});

export const patientOf = (person: Person, over: Record<string, unknown> = {}) =>
  person.get('POST /patients', patientView, { body: patientBody(over) });

/** What the desk sends to open a case for both arches on one shipped path. */
export async function caseBody(desk: Person, over: Record<string, unknown> = {}, code = 'conventional') {
  const practice = await desk.get('GET /practice', practiceView);
  const pathVersionId = practice.paths.find((path) => path.code === code)?.versionId;
  const arches = ['upper', 'lower'].map((arch) => ({ arch, pathVersionId }));
  return { patientId: '', arches, clinicIds: practice.clinics.map(({ id }) => id), ...over };
}

/** A case of a patient of its own. */
export async function caseOf(desk: Person, over: Record<string, unknown> = {}, code?: string): Promise<CaseView> {
  const patientId = (await patientOf(desk)).id;
  return desk.get('POST /cases', caseView, { body: await caseBody(desk, { patientId, ...over }, code) });
}

/** Books the first offer for a case. */
export async function booked(desk: Person, caseId: string): Promise<CaseView> {
  const { offers } = await desk.get(`POST /cases/${caseId}/offers`, offersView, { body: { count: 1 } });
  const [offer] = offers;
  if (offer === undefined) throw new Error('There is no offer.');
  const body = { offerId: offer.id, kind: 'phone' };
  const hold = await desk.get(`POST /cases/${caseId}/holds`, holdView, { body });
  return desk.get(`POST /holds/${hold.id}/confirm`, caseView, { body: { planHash: hold.planHash, firm: 'all' } });
}
