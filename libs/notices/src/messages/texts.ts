import type { Words } from './words.js';

/** What patients are written, by what happened. */
export const PATIENT_MESSAGES = ['reminder', 'itinerary', 'moved', 'cancelled'] as const;
export type PatientMessage = (typeof PATIENT_MESSAGES)[number];

/** A message with places in braces, such as `{visit}`, to be filled when it is sent. */
export interface MessageText {
  readonly subject: string;
  readonly text: string;
}

/** The text that comes with the product. */
export function deliveredText(words: Words, message: PatientMessage): MessageText {
  const lines = (...body: readonly string[]): string => [words.hello('{name}'), '', ...body].join('\n');
  const details = [words.details, '{details}', words.call('{phone}')];
  const replies = [words.confirm, '{confirm}', words.askToMove, '{move}', ...details];
  switch (message) {
    case 'reminder':
      return { subject: words.subject.reminder('{when}'), text: lines(words.reminder, '{visit}', '', ...replies) };
    case 'itinerary':
      return {
        subject: words.subject.itinerary,
        text: lines('{count}', '', '{visits}', '', words.askToMove, '{move}', ...details),
      };
    case 'moved':
      return {
        subject: words.subject.moved,
        text: lines(words.moved, '{visit}', words.before('{before}'), '', ...replies),
      };
    case 'cancelled':
      return {
        subject: words.subject.cancelled,
        text: lines(words.cancelled, '{visit}', '', words.call('{phone}')),
      };
  }
}

/** What is filled in is not read again, so that a name in braces stays a name. */
export function filledIn(text: string, values: Readonly<Record<string, string>>): string {
  return text.replace(/\{([a-z]+)\}/g, (place, name: string) => values[name] ?? place);
}
