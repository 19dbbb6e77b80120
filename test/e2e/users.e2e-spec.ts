import { practiceView, problem, userList, userView, type UserView } from '@archwright/contracts';
import { Person, addPerson, openTwoPractices, type TwoPractices } from './cases-client.js';
import { cookieOf, postSession } from './practice/demo-api.js';

const FIRST = 'the-first-long-password';
const SECOND = 'the-second-long-password';

let two: TwoPractices;
let manager: Person;
let admin: Person;
let clinicId: string;
beforeAll(async () => {
  two = await openTwoPractices();
  manager = new Person(two.api.url, await two.api.signIn('manager'));
  admin = new Person(two.api.url, await two.api.signIn('admin'));
  clinicId = (await manager.get('GET /practice', practiceView)).clinics[0]?.id ?? '';
}, 90_000);
afterAll(() => two.close());

const account = (over: object = {}) => ({
  name: 'Nia New-Example',
  role: 'front-desk',
  mail: null,
  clinicIds: [clinicId],
  laboratoryIds: [],
  practitionerId: null,
  ...over,
});
const add = (signInName: string, over: object = {}) =>
  manager.get('POST /users', userView, { body: { ...account(over), signInName, password: FIRST } });
const signIn = async (signInName: string, password: string) => {
  const answer = await postSession(two.api.url, { signInName, password });
  return answer.status === 201 ? new Person(two.api.url, cookieOf(answer)) : answer.status;
};
const signedIn = async (signInName: string, password: string): Promise<Person> => {
  const person = await signIn(signInName, password);
  if (typeof person === 'number') throw new Error(`Sign-in was refused with ${String(person)}.`);
  return person;
};
const userNamed = async (name: string): Promise<UserView> => {
  const found = (await admin.get('GET /users', userList)).items.find((each) => each.name === name);
  if (found === undefined) throw new Error(`There is no ${name}.`);
  return found;
};
const put = ({ id, version }: UserView, what: string, body: object, by = manager) =>
  by.ask(`PUT /users/${id}${what}`, { version, body });

describe('an account', () => {
  it('lets a person in from the moment it is made, under a name that nobody else has', async () => {
    expect(await add('Nia@Example.test')).toMatchObject({ signInName: 'nia@example.test', isActive: true });
    const nia = await signedIn('nia@example.test', FIRST);
    expect((await nia.get('GET /practice', practiceView)).clinics.map(({ id }) => id)).toEqual([clinicId]);
    const taken = await manager.ask('POST /users', {
      body: { ...account(), signInName: 'desk@example.test', password: FIRST },
    });
    expect([taken.status, problem.parse(taken.body).detail]).toEqual([422, expect.stringContaining('another name')]);
  });

  it('ends with its sessions, and begins again', async () => {
    const user = await add('leaver@example.test');
    const leaver = await signedIn('leaver@example.test', FIRST);
    const ended = userView.parse((await put(user, '/activity', { isActive: false })).body);
    expect(ended.isActive).toBe(false);
    expect((await leaver.ask('GET /practice')).status).toBe(401);
    expect(await signIn('leaver@example.test', FIRST)).toBe(401);
    expect((await put(user, '/activity', { isActive: true })).status).toBe(412);
    await put(ended, '/activity', { isActive: true });
    expect(await signIn('leaver@example.test', FIRST)).toBeInstanceOf(Person);
  });

  it('whose password is set anew is signed out everywhere; the person then chooses their own', async () => {
    const user = await add('forgetful@example.test');
    const before = await signedIn('forgetful@example.test', FIRST);
    await put(user, '/password', { password: SECOND });
    expect((await before.ask('GET /practice')).status).toBe(401);
    const after = await signedIn('forgetful@example.test', SECOND);
    const own = { current: 'wrong', next: 'a-password-of-my-own' };
    expect((await after.ask('PUT /sessions/current/password', { body: own })).status).toBe(422);
    const done = await after.ask('PUT /sessions/current/password', { body: { ...own, current: SECOND } });
    expect(done.status).toBe(204);
    expect((await after.ask('GET /practice')).status).toBe(401);
    expect(await signIn('forgetful@example.test', own.next)).toBeInstanceOf(Person);
  });

  it('that may do less than before is signed out; one that may do more is not', async () => {
    const clinics = (await manager.get('GET /practice', practiceView)).clinics.map(({ id }) => id);
    const user = await add('mover@example.test');
    const mover = await signedIn('mover@example.test', FIRST);
    const more = userView.parse((await put(user, '', account({ clinicIds: clinics }))).body);
    expect((await mover.ask('GET /practice')).status).toBe(200);
    await put(more, '', account({ clinicIds: [] }));
    expect((await mover.ask('GET /practice')).status).toBe(401);
  });
});

describe('who looks after accounts', () => {
  it('gives no more than they have: no administrator is made or touched by a manager', async () => {
    const body = { ...account({ role: 'administrator' }), signInName: 'root@example.test', password: FIRST };
    expect((await manager.ask('POST /users', { body })).status).toBe(403);
    expect((await put(await userNamed('Ira Admin-Example'), '/activity', { isActive: false })).status).toBe(404);
  });

  it('leaves alone who works where they do not', async () => {
    const [north] = (await manager.get('GET /practice', practiceView)).clinics;
    const local = await addPerson(two.api, two.organisationId, { role: 'manager', clinicIds: [north?.id ?? ''] });
    const names = (await local.get('GET /users', userList)).items.map(({ name }) => name);
    expect(names).not.toContain('Ada Manager-Example');
    expect((await put(await userNamed('Ada Manager-Example'), '/password', { password: SECOND }, local)).status).toBe(
      404,
    );
  });

  it('locks out neither themselves nor the practice', async () => {
    const self = await userNamed('Ira Admin-Example');
    expect((await put(self, '/activity', { isActive: false }, admin)).status).toBe(422);
    expect((await put(self, '', account({ role: 'manager' }), admin)).status).toBe(422);
  });

  it('ties a clinician to a calendar, and nobody else', async () => {
    const clinician = account({ role: 'clinician' });
    const { status, body } = await manager.ask('POST /users', {
      body: { ...clinician, signInName: 'dr@example.test', password: FIRST },
    });
    expect([status, problem.parse(body).detail]).toEqual([422, expect.stringContaining('a clinician of the set-up')]);
  });

  it('is told at the field what a password needs', async () => {
    const { status, body } = await manager.ask('POST /users', {
      body: { ...account(), signInName: 'short', password: 'short' },
    });
    expect([status, problem.parse(body).errors?.[0]]).toMatchObject([
      400,
      { path: 'password', problem: 'at least 15 characters' },
    ]);
  });
});
