import { auditPage, setupView, userList, type AuditPage, type CaseView } from '@archwright/contracts';
import { Person, addPerson, booked, caseOf, openTwoPractices, type TwoPractices } from './cases-client.js';

let two: TwoPractices;
let manager: Person;
let view: CaseView;
beforeAll(async () => {
  two = await openTwoPractices();
  manager = new Person(two.api.url, await two.api.signIn('manager'));
  view = await booked(two.desk, (await caseOf(two.desk)).id);
  await caseOf(two.desk);
}, 90_000);
afterAll(() => two.close());

const find = (search = '', person = manager): Promise<AuditPage> =>
  person.get(`GET /audit-entries?${search}`, auditPage);

it('tells who did what with a case and with its parts, the latest first', async () => {
  const { items } = await find(`caseNumber=${view.number}`);
  expect(new Set(items.map(({ caseId }) => caseId))).toEqual(new Set([view.id]));
  expect(items.map(({ action }) => action)).toEqual(
    expect.arrayContaining(['case-opened', 'hold-offer', 'confirm-hold']),
  );
  expect(new Set(items.map(({ subjectKind }) => subjectKind)).size).toBeGreaterThan(1);
  expect(items[0]).toMatchObject({ by: 'Robin Desk-Example' });
  expect(JSON.stringify(items)).not.toContain(view.patient.name);
});

it('is searched by person, by deed and by day', async () => {
  const { items: users } = await manager.get('GET /users', userList);
  const desk = users.find(({ role }) => role === 'front-desk')?.id ?? '';
  const bench = users.find(({ role }) => role === 'lab')?.id ?? '';
  expect((await find(`actorId=${desk}&action=case-`)).items.every(({ action }) => action.startsWith('case-'))).toBe(
    true,
  );
  expect((await find(`actorId=${desk}&action=case-`)).items.length).toBeGreaterThanOrEqual(2);
  expect((await find(`actorId=${bench}`)).items).toEqual([]);
  expect((await find('fromOn=2027-01-04&untilOn=2027-01-04')).items.length).toBeGreaterThan(0);
  expect((await find('untilOn=2027-01-03')).items).toEqual([]);
});

it('names what a practice consists of', async () => {
  const { entries } = await manager.get('GET /setup', setupView);
  const chair = entries.find(({ record }) => record.kind === 'chair');
  const path = `PUT /setup/records/${chair?.id ?? ''}/retirement`;
  await manager.ask(path, { version: chair?.version ?? 0, body: { isRetired: false } });
  const [latest] = (await find('action=setup-')).items;
  expect(latest).toMatchObject({ action: 'setup-returned', subjectKind: 'chair', subjectName: 'Chair 1' });
});

it('gives every entry once, page by page', async () => {
  const all = (await find('limit=200')).items.map(({ id }) => id);
  const paged: string[] = [];
  for (let next: string | null = ''; next !== null;) {
    const page: AuditPage = await find(`limit=3${next === '' ? '' : `&cursor=${next}`}`);
    paged.push(...page.items.map(({ id }) => id));
    next = page.next;
  }
  expect(paged).toEqual(all);
});

it('keeps cases of other clinics from a manager who does not answer for them', async () => {
  const elsewhere = await addPerson(two.api, two.organisationId, { role: 'manager' });
  expect((await find(`caseNumber=${view.number}`, elsewhere)).items).toEqual([]);
});
