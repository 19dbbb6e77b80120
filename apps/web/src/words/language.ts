/** Languages of the screens; the words of each are complete (`catalogues.spec.ts`). */
export const LANGUAGES = ['en', 'de', 'ar'] as const;
export type Language = (typeof LANGUAGES)[number];

interface Habits {
  /** The language's own name for itself, so that whoever needs it can read it. */
  name: string;
  /** For dates, numbers and lists. */
  locale: string;
  direction: 'ltr' | 'rtl';
}

/** Arabic is written with the digits of the measuring instruments: a figure read aloud and typed in has one shape. */
export const HABITS: Record<Language, Habits> = {
  en: { name: 'English', locale: 'en-GB', direction: 'ltr' },
  de: { name: 'Deutsch', locale: 'de-DE', direction: 'ltr' },
  ar: { name: 'العربية', locale: 'ar-u-nu-latn', direction: 'rtl' },
};

const KEPT_AS = 'archwright-language';

const isLanguage = (code: string | null | undefined): code is Language =>
  (LANGUAGES as readonly (string | null | undefined)[]).includes(code);

/** What was chosen in this browser, else the first of the browser's languages that there is, else English. */
export function preferred(chosen: string | null, ofBrowser: readonly string[]): Language {
  if (isLanguage(chosen)) return chosen;
  return ofBrowser.map((tag) => tag.split('-')[0]).find(isLanguage) ?? 'en';
}

function keptChoice(): string | null {
  try {
    return localStorage.getItem(KEPT_AS);
  } catch {
    // A browser may refuse to keep anything; then its own languages decide.
    return null;
  }
}

/** The language of this page from its first word to its last: words are read once, when their module is. */
export const language: Language = typeof document === 'undefined' ? 'en' : preferred(keptChoice(), navigator.languages);

export const { locale, direction } = HABITS[language];

/** Keeps the choice and draws everything anew; what was typed is kept as a draft. */
export function speak(chosen: Language): void {
  localStorage.setItem(KEPT_AS, chosen);
  window.location.reload();
}
