import { ScoringError } from '../errors.js';

/** What the patient says aloud; written for this purpose. */
export interface SibilantPrompt {
  readonly language: string;
  readonly sentence: string;
  readonly direction: 'ltr' | 'rtl';
  /** Words, and how many letters of them are sibilants as written. */
  readonly words: number;
  readonly sibilants: number;
}

/** Letters that stand for a sibilant in each language's usual writing; only used to count. */
const SIBILANT_LETTERS: Readonly<Record<string, RegExp>> = {
  en: /s/gi,
  de: /[sßz]/gi,
  fr: /[sçz]/gi,
  es: /[sz]/gi,
  it: /[sz]/gi,
  tr: /[sşz]/gi,
  ar: /[سصزش]/g,
};

const SENTENCES: Readonly<Record<string, string>> = {
  en: 'Susan sees sixty-six small ships sail past since sunrise this Sunday',
  de: 'Susanne sieht sechsundsechzig Segelschiffe seit Sonnenaufgang sanft am See vorbeisausen',
  fr: 'Suzanne passe ses six soirs ici sans souci avec sa sœur si sage',
  es: 'Susana sabe sesenta y seis sonetos sencillos sobre sus seis hermosas islas',
  it: 'Susanna sale sessantasei sassi e si siede sola sulla spessa sabbia senese',
  tr: 'Süsen sessizce sahilde süzülen sekiz sarı sandalı saatlerce seyreder',
  ar: 'سوسن تسمع ست سفن تسير صباحا بسلام وسط شمس الساحل',
};

/**
 * The sentence for the sibilant test and the closest speaking space, in rapid speech.
 *
 * @throws {ScoringError} `measures.no-prompt` for a language without one
 */
export function sibilantPrompt(language: string): SibilantPrompt {
  const sentence = SENTENCES[language];
  const letters = SIBILANT_LETTERS[language];
  if (sentence === undefined || letters === undefined) {
    throw new ScoringError(
      'no-prompt',
      `There is no sibilant prompt in "${language}". Available: ${SIBILANT_LANGUAGES.join(', ')}.`,
      { language },
    );
  }
  return {
    language,
    sentence,
    direction: language === 'ar' ? 'rtl' : 'ltr',
    words: sentence.split(/\s+/u).length,
    sibilants: [...sentence.matchAll(letters)].length,
  };
}

/** Languages that have a prompt. */
export const SIBILANT_LANGUAGES: readonly string[] = Object.keys(SENTENCES);
