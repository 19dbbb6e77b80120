import { changeMessageTexts, messageTextsView, practiceRulesView, problem } from '@archwright/contracts';
import { Person, openTwoPractices, type TwoPractices } from './cases-client.js';

let two: TwoPractices;
let manager: Person;
beforeAll(async () => {
  two = await openTwoPractices();
  manager = new Person(two.api.url, await two.api.signIn('manager'));
}, 90_000);
afterAll(() => two.close());

const texts = () => manager.get('GET /message-texts', messageTextsView);
const OWN = {
  message: 'reminder' as const,
  language: 'en' as const,
  subject: 'See you on {when}',
  text: 'Dear {name},\n\n{visit}\n\nYes: {confirm}\nOther time: {move}\nOr {phone}',
};

it('come delivered in every language, each such that a practice could have written it', async () => {
  const view = await texts();
  expect(view.texts).toHaveLength(12);
  const delivered = view.texts.map(({ message, language, delivered: words }) => ({ message, language, ...words }));
  expect(changeMessageTexts.parse({ texts: delivered })).toEqual({ texts: delivered });
  expect(view.texts.every(({ own, sample }) => own === null && !/[{}]/.test(sample.text))).toBe(true);
});

it('are the practice’s own from then on, and as delivered again when they are taken back', async () => {
  const { version } = await texts();
  const body = { texts: [OWN] };
  const changed = await manager.get('PUT /message-texts', messageTextsView, { version, body });
  expect(changed.version).toBe(version + 1);
  const shown = changed.texts.filter(({ own }) => own !== null);
  expect(shown).toMatchObject([{ message: 'reminder', language: 'en' }]);
  expect(shown[0]?.sample.subject).toBe('See you on Thursday, 28 January 2027 at 09:20');
  expect(shown[0]?.sample.text).toMatch(/^Dear \u2068Alma\u2069,\n\nThursday, 28 January 2027 at 09:20\n/);
  const { samples } = await manager.get('GET /practice-rules', practiceRulesView);
  expect(samples.map(({ text }) => text.startsWith('Dear '))).toEqual([true, false, false]);
  const back = await manager.get('PUT /message-texts', messageTextsView, {
    version: changed.version,
    body: { texts: [] },
  });
  expect(back.texts.every(({ own }) => own === null)).toBe(true);
});

it('are refused as a whole where one lacks what a patient must know, and each field says what it takes', async () => {
  const { version } = await texts();
  const lacking = { ...OWN, language: 'de', subject: 'Am {day}', text: 'Kommen Sie bitte: {visit}' };
  const refused = await manager.ask('PUT /message-texts', { version, body: { texts: [OWN, lacking] } });
  expect(refused.status).toBe(400);
  expect(
    problem
      .parse(refused.body)
      .errors?.map(({ path }) => path)
      .sort(),
  ).toEqual(['texts.1.subject', 'texts.1.text']);
  expect((await texts()).version).toBe(version);
});
