import { locale } from './language.js';

const rules = new Intl.PluralRules('en');

/** "1 visit", "3 visits". */
export function count(n: number, one: string, many: string): string {
  return `${String(n)} ${rules.select(n) === 'one' ? one : many}`;
}

/** "a", "a and b", "a, b and c". */
export function listed(words: readonly string[]): string {
  return new Intl.ListFormat(locale, { type: 'conjunction' }).format(words);
}

/** "a, b, c": a list that stands by itself, not in a sentence. */
export function enumerated(words: readonly string[]): string {
  return new Intl.ListFormat(locale, { type: 'unit' }).format(words);
}

/** Codes such as `jaw-relation` as words, where no better words came with them. */
export function spelled(code: string): string {
  return code.replaceAll('-', ' ');
}
