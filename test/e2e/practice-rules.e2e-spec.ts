import { practiceRulesView, problem, toothListView } from '@archwright/contracts';
import { Reminder } from '@archwright/records';
import { Person, booked, caseOf, openTwoPractices, type TwoPractices } from './cases-client.js';

let two: TwoPractices;
let manager: Person;
beforeAll(async () => {
  two = await openTwoPractices();
  manager = new Person(two.api.url, await two.api.signIn('manager'));
}, 90_000);
afterAll(() => two.close());

const rules = () => manager.get('GET /practice-rules', practiceRulesView);

it('hold for the next booking, and are shown in the words that patients get', async () => {
  const before = await rules();
  expect(before.samples.map(({ language }) => language)).toEqual(['en', 'de', 'ar']);
  const wanted = {
    ...before.rules,
    mailLeadMinutes: [1440],
    phoneLeadMinutes: [600],
    recallMonths: 9,
    ownLines: { en: 'Ring the side door.', de: '', ar: '' },
  };
  const after = await manager.get('PUT /practice-rules', practiceRulesView, { version: before.version, body: wanted });
  expect(after).toMatchObject({ version: before.version + 1, rules: wanted });
  expect(after.samples.map(({ text }) => text.includes('Ring the side door.'))).toEqual([true, false, false]);

  const view = await booked(two.desk, (await caseOf(two.desk)).id);
  const appointmentId =
    view.stages.at(-1)?.appointmentId ?? view.stages.find(({ startsAt }) => startsAt !== null)?.appointmentId;
  const reminders = await two.rows((tx) => tx.findBy(Reminder, { appointmentId: appointmentId ?? '' }));
  expect(reminders.map(({ leadMinutes }) => leadMinutes)).toEqual([600]);
});

it('and the list of teeth are kept in one place, and each leaves the other as it is', async () => {
  const { version } = await rules();
  const body = { shades: ['Old ivory'], moulds: ['Broad 3'], arrangements: ['Even'] };
  const list = await manager.get('PUT /tooth-list', toothListView, { version, body });
  const { rules: known } = await rules();
  const wanted = { ...known, recallMonths: 4 };
  await manager.get('PUT /practice-rules', practiceRulesView, { version: list.version, body: wanted });
  expect(await manager.get('GET /tooth-list', toothListView)).toMatchObject(body);
  const { version: next } = await rules();
  await manager.get('PUT /practice-rules', practiceRulesView, {
    version: next,
    body: { ...wanted, recallMonths: null },
  });
  expect((await rules()).rules.recallMonths).toBeNull();
  const after = await manager.get('GET /tooth-list', toothListView);
  expect(after).toMatchObject(body);
  await manager.get('PUT /tooth-list', toothListView, { version: after.version, body: { ...body, shades: [] } });
  expect((await rules()).rules).toEqual({ ...wanted, recallMonths: null });
});

it('are changed once by two who saw the same', async () => {
  const { version, rules: body } = await rules();
  const answers = await Promise.all([1, 2].map(() => manager.ask('PUT /practice-rules', { version, body })));
  expect(answers.map(({ status }) => status).sort()).toEqual([200, 412]);
});

it('say at the field what they accept', async () => {
  const { version, rules: known } = await rules();
  const body = { ...known, mailLeadMinutes: [60, 60], phoneHoldMinutes: 0 };
  const { status, body: refusal } = await manager.ask('PUT /practice-rules', { version, body });
  const errors = problem.parse(refusal).errors ?? [];
  expect([status, errors.map(({ path }) => path)]).toEqual([400, ['mailLeadMinutes', 'phoneHoldMinutes']]);
});
