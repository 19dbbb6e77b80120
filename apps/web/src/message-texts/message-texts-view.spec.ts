import type { MessageTextsView } from '@archwright/contracts';
import { draftOfTexts, keyOf, placesOf, readTexts } from './message-texts-view.js';

const delivered = { subject: 'Your appointment was cancelled', text: 'Hello {name},\n{visit}\nCall {phone}' };
const shown = (language: 'en' | 'de', own: typeof delivered | null = null) => ({
  message: 'cancelled' as const,
  language,
  own,
  delivered,
  sample: delivered,
});
const view: MessageTextsView = { version: 3, texts: [shown('en'), shown('de', { ...delivered, subject: 'Abgesagt' })] };

it('sends what the practice has written, and nothing that reads as delivered', () => {
  const draft = draftOfTexts(view);
  expect(readTexts(view, draft)).toEqual({
    body: { texts: [{ message: 'cancelled', language: 'de', subject: 'Abgesagt', text: delivered.text }] },
  });
  expect(readTexts(view, { ...draft, 'cancelled de': { ...delivered, text: `${delivered.text}\n` } })).toEqual({
    body: { texts: [] },
  });
});

it('says what is wrong beside the field of the text that it is in', () => {
  const draft = {
    ...draftOfTexts(view),
    'cancelled en': { subject: 'x', text: 'Hello {nobody}, call {phone} please.' },
  };
  expect(readTexts(view, draft)).toEqual({
    errors: {
      'cancelled en': {
        subject: 'Enter 3 to 120 characters on one line.',
        text: 'There is no place {nobody} here. Put {visit} somewhere into the text.',
      },
    },
  });
});

it('names the places of a message, those that it needs first', () => {
  expect(placesOf('cancelled').map(({ place, isNeeded }) => [place, isNeeded])).toEqual([
    ['{visit}', true],
    ['{phone}', true],
    ['{name}', false],
  ]);
  expect(view.texts.map(keyOf)).toEqual(['cancelled en', 'cancelled de']);
});
