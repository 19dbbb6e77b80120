import { IntlMessageFormat } from 'intl-messageformat';
import { direction, HABITS, language, type Language } from './language.js';

/** Texts of a catalogue by name, in groups as deep as the screen's own. */
export interface Catalogue {
  readonly [name: string]: string | Catalogue;
}

/** The same texts in another language: a text that is missing or left over doesn't compile. */
export type SameTexts<C> = { readonly [name in keyof C]: C[name] extends string ? string : SameTexts<C[name]> };

type Fetched<C> = () => Promise<{ messages: SameTexts<C> }>;

/** The catalogue in the language of the page. English comes with its module; another one is fetched, and only that one. */
export async function inLanguage<const C extends Catalogue>(
  english: C,
  others: Record<Exclude<Language, 'en'>, Fetched<C>>,
): Promise<SameTexts<C>> {
  return language === 'en' ? (english as SameTexts<C>) : (await others[language]()).messages;
}

type Values = Readonly<Record<string, string | number>>;

/**
 * Names and numbers keep their own direction inside a right-to-left text: "27-0001" would else be read "0001-27" (Unicode
 * Standard Annex 9, first strong isolate).
 */
const isolated = (value: string | number): string | number =>
  typeof value === 'string' ? `\u2068${value}\u2069` : value;

const inPlace = (values: Values): Values =>
  direction === 'ltr'
    ? values
    : Object.fromEntries(Object.entries(values).map(([name, value]) => [name, isolated(value)]));

/**
 * A text of a catalogue with places to fill, in the message format of ICU: `values` names what it is called with.
 * The text is read on its first use, not when the page starts.
 */
export function filled<A extends readonly unknown[]>(
  message: string,
  values: (...of: A) => Values,
): (...of: A) => string {
  let format: IntlMessageFormat | undefined;
  return (...of) => {
    format ??= new IntlMessageFormat(message, HABITS[language].locale, undefined, { ignoreTag: true });
    return String(format.format(inPlace(values(...of))));
  };
}
