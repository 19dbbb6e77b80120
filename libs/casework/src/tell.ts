import { TOLD, type Filling, type Told, type ToldCode } from '@archwright/contracts';
import { IntlMessageFormat } from 'intl-messageformat';
import { dateInWords, momentInWords } from './cases/dates-in-words.js';

/**
 * A sentence by its code and what it is filled with; null says that there is nothing to say. What is filled with no list may
 * be part of one.
 */
export function told<Value extends Filling = string>(
  code: ToldCode,
  values: Readonly<Record<string, Value | null>> = {},
): { code: ToldCode; values: Record<string, Value | string> } {
  return {
    code,
    values: Object.fromEntries(Object.entries(values).map(([name, value]) => [name, value ?? 'none'])),
  };
}

/** The sentence in English, as the service says it itself. */
export function inEnglish({ code, values }: Told): string {
  const words = Object.fromEntries(Object.entries(values).map(([name, value]) => [name, wordsOf(value)]));
  return String(new IntlMessageFormat(TOLD[code], 'en-GB', undefined, { ignoreTag: true }).format(words));
}

function wordsOf(value: Filling): string | number {
  if (typeof value !== 'object') return value;
  if ('moment' in value) return momentInWords(new Date(value.moment), value.zone);
  if ('day' in value) return dateInWords(value.day);
  if ('title' in value) return value.title;
  return value.list.map(inEnglish).join(', ');
}

/** Both, as a view carries them. */
export const tell = (sentence: Told): { sentence: string; told: Told } => ({
  sentence: inEnglish(sentence),
  told: sentence,
});
