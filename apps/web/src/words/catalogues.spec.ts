import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { IntlMessageFormat } from 'intl-messageformat';
import { HABITS, LANGUAGES, preferred, type Language } from './language.js';
import type { Catalogue } from './messages.js';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const catalogues = (language: Language): string[] => readdirSync(here(language)).sort();

async function textsOf(language: Language, file: string): Promise<Map<string, string>> {
  const { messages } = (await import(here(`${language}/${file}`))) as { messages: Catalogue };
  const texts = new Map<string, string>();
  const walk = (part: Catalogue, path: string): void => {
    for (const [name, of] of Object.entries(part)) {
      if (typeof of === 'string') texts.set(`${path}${name}`, of);
      else walk(of, `${path}${name}.`);
    }
  };
  walk(messages, '');
  return texts;
}

type Element = ReturnType<IntlMessageFormat['getAst']>[number];

/** A part that stands as it is; its kind has the number 0. */
const isText = ({ type }: { type: number }): boolean => type === 0;

/** What a message is filled with, and for each plural its categories. */
function askedFor(message: string, language: Language): { names: string[]; plurals: string[][] } {
  const names = new Set<string>();
  const plurals: string[][] = [];
  const walk = (elements: readonly Element[]): void => {
    for (const element of elements) {
      if ('value' in element && !isText(element)) names.add(element.value);
      if (!('options' in element)) continue;
      if ('pluralType' in element) plurals.push(Object.keys(element.options));
      for (const option of Object.values(element.options)) walk(option.value);
    }
  };
  walk(new IntlMessageFormat(message, HABITS[language].locale, undefined, { ignoreTag: true }).getAst());
  return { names: [...names].sort(), plurals };
}

describe('the catalogues', () => {
  const others = LANGUAGES.filter((language) => language !== 'en');

  it.each(others)('has every catalogue in %s', (language) => {
    expect(catalogues(language)).toEqual(catalogues('en'));
  });

  it.each(catalogues('en').flatMap((file) => others.map((language) => [file, language] as const)))(
    '%s says in %s what the English one says, filled with the same',
    async (file, language) => {
      const english = await textsOf('en', file);
      const texts = await textsOf(language, file);
      expect([...texts.keys()].sort()).toEqual([...english.keys()].sort());
      for (const [name, text] of texts) {
        expect({ name, text: text.trim() }).not.toEqual({ name, text: '' });
        const asked = askedFor(text, language);
        expect({ name, filledWith: asked.names }).toEqual({
          name,
          filledWith: askedFor(english.get(name) ?? '', 'en').names,
        });
        // Every number has its form: the categories of the language, unless some stand for all of them by "other".
        const categories = new Intl.PluralRules(HABITS[language].locale).resolvedOptions().pluralCategories;
        for (const given of asked.plurals) {
          expect({ name, given: given.filter((category) => !category.startsWith('=')) }).toEqual({
            name,
            given: expect.arrayContaining(['other']) as unknown,
          });
          expect(categories).toEqual(expect.arrayContaining(given.filter((category) => !category.startsWith('='))));
        }
      }
    },
  );
});

describe('which language a page speaks', () => {
  it('takes what was chosen, else what the browser asks for first, else English', () => {
    expect(preferred('ar', ['de-AT', 'en'])).toBe('ar');
    expect(preferred(null, ['fr-CH', 'de-AT', 'en'])).toBe('de');
    expect(preferred('tlh', ['fr'])).toBe('en');
    expect(preferred(null, [])).toBe('en');
  });
});
