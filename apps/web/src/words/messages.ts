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
 * A text put in a place. A choice in a message (`select`) goes by the text itself; where it is shown in a right-to-left text
 * it keeps its own direction: "27-0001" would else be read "0001-27" (Unicode Standard Annex 9, first strong isolate).
 */
class Put {
  constructor(private readonly text: string) {}

  toString(): string {
    return this.text;
  }

  get shown(): string {
    return direction === 'rtl' ? `\u2068${this.text}\u2069` : this.text;
  }
}

const putIn = (values: Values): Record<string, Put | number> =>
  Object.fromEntries(
    Object.entries(values).map(([name, value]) => [name, typeof value === 'string' ? new Put(value) : value]),
  );

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
    const parts = format.formatToParts<Put>(putIn(values(...of)));
    return parts.map(({ value }) => (value instanceof Put ? value.shown : value)).join('');
  };
}
