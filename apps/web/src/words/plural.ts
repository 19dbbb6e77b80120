import { delivered } from './delivered.js';
import { language, locale } from './language.js';

let names: Intl.DisplayNames | undefined;

/** A language by its code, such as `de`, in the words of the page. */
export function languageName(code: string): string {
  names ??= new Intl.DisplayNames([locale], { type: 'language' });
  return names.of(code) ?? code;
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
  return delivered(code.replaceAll('-', ' '));
}

/** "a; b": parts that may have commas in them. */
export function apart(parts: readonly string[]): string {
  return parts.join(language === 'ar' ? '؛ ' : '; ');
}
