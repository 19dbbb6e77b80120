import { changeMessageTexts, faultsOfPlaces } from './message-text.js';

const SOUND = {
  message: 'cancelled' as const,
  language: 'en' as const,
  subject: 'It is off',
  text: 'Hello {name}, this will not take place:\n{visit}\nCall {phone}.',
};
const problems = (changes: Partial<typeof SOUND>): string[] => {
  const parsed = changeMessageTexts.safeParse({ texts: [{ ...SOUND, ...changes }] });
  return parsed.success ? [] : parsed.error.issues.map(({ path, message }) => `${path.join('.')}: ${message}`);
};

it('takes a text with all that it must say', () => {
  expect(problems({})).toEqual([]);
});

it.each([
  [
    'a place that the message has not',
    { text: `${SOUND.text} {confirm}` },
    'texts.0.text: of places only {visit}, {phone}, {name}',
  ],
  [
    'what a patient must know left out',
    { text: 'Hello {name}, this will not take place.' },
    'texts.0.text: {visit}, {phone} somewhere in the text',
  ],
  ['a brace alone', { text: `${SOUND.text} {` }, 'texts.0.text: braces in pairs around the name of a place'],
  ['a place in a subject that has none', { subject: 'Off: {visit}' }, 'texts.0.subject: no place in braces'],
  ['a subject over two lines', { subject: 'It is\noff' }, 'texts.0.subject: one line'],
])('refuses %s, and says what it takes', (_, changes, problem) => {
  expect(problems(changes)).toEqual([problem]);
});

it('refuses two texts for the same message and language', () => {
  expect(changeMessageTexts.safeParse({ texts: [SOUND, SOUND] }).success).toBe(false);
  expect(changeMessageTexts.safeParse({ texts: [SOUND, { ...SOUND, language: 'de' }] }).success).toBe(true);
});

it('names every unknown place once', () => {
  const text = `${SOUND.text} {a} {b} {a}`;
  expect(faultsOfPlaces('cancelled', { subject: 'Off', text })).toEqual([
    { field: 'text', kind: 'unknown', places: ['a', 'b'] },
  ]);
});
