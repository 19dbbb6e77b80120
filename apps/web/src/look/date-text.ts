const NUMERIC = /^(\d{1,2})\s*[./-]\s*(\d{1,2})\s*[./-]\s*(\d{4})\.?$/;
const ISO = /^(\d{4})-(\d{2})-(\d{2})$/;
/** Marks of writing direction, which come along when a date is copied out of Arabic text. */
const DIRECTION_MARKS = /[\u061c\u200e\u200f\u2066-\u2069]/g;
const ARABIC_DIGITS = /[\u0660-\u0669]/g;
/** What names a month or weekday in part has at least so many letters: "Sep", "Sept". */
const SHORTEST = 3;

/**
 * The date that somebody typed, as `YYYY-MM-DD`.
 *
 * Read are the form of ISO 8601, day, month and year in figures, and the form with the month by name, in which fields show
 * dates; a weekday may stand with it. It decides nothing: whoever changes the day of a shown date need not change the
 * weekday too. Year, and in the form of ISO 8601 month and day, have all their figures, so that a date that is half typed is none yet.
 *
 * @param locale names of months and weekdays are read in its language
 * @returns null for what is no date of the calendar
 */
export function readDate(text: string, locale: string): string | null {
  const plain = text
    .replace(DIRECTION_MARKS, '')
    .replace(ARABIC_DIGITS, (digit) => String(digit.charCodeAt(0) - 0x0660))
    .trim();
  const iso = ISO.exec(plain);
  if (iso) return dateOf(Number(iso[1]), Number(iso[2]), Number(iso[3]));
  const numeric = NUMERIC.exec(plain);
  if (numeric) return dateOf(Number(numeric[3]), Number(numeric[2]), Number(numeric[1]));
  return readNamed(plain, locale);
}

function readNamed(text: string, locale: string): string | null {
  const parts = text.split(/[\s,.،]+/).filter((part) => part !== '');
  const [day, year, ...moreFigures] = parts.filter((part) => /^\d+$/.test(part));
  const names = parts.filter((part) => !/^\d+$/.test(part)).map((name) => name.toLocaleLowerCase(locale));
  const { months, weekdays } = namesIn(locale);
  const [month, ...moreMonths] = names.flatMap((name) => placesOf(name, months));
  const others = names.filter((name) => placesOf(name, months).length === 0);
  const isClear = moreFigures.length === 0 && moreMonths.length === 0 && others.length <= 1;
  if (!isClear || month === undefined || !/^\d{1,2}$/.test(day ?? '') || !/^\d{4}$/.test(year ?? '')) return null;
  if (others.some((name) => placesOf(name, weekdays).length === 0)) return null;
  return dateOf(Number(year), month + 1, Number(day));
}

/** Of the months or weekdays, those that a name can stand for, from 0. */
const placesOf = (name: string, known: readonly (readonly string[])[]): number[] =>
  known.flatMap((spellings, place) =>
    spellings.some((spelling) => spelling === name || (name.length >= SHORTEST && spelling.startsWith(name)))
      ? [place]
      : [],
  );

interface Names {
  readonly months: readonly (readonly string[])[];
  readonly weekdays: readonly (readonly string[])[];
}

const known = new Map<string, Names>();

function namesIn(locale: string): Names {
  const before = known.get(locale);
  if (before) return before;
  const spelled = (options: Intl.DateTimeFormatOptions, kind: 'month' | 'weekday', at: number): string =>
    new Intl.DateTimeFormat(locale, { ...options, timeZone: 'UTC' })
      .formatToParts(at)
      .find(({ type }) => type === kind)
      ?.value.replace('.', '')
      .toLocaleLowerCase(locale) ?? '';
  const made: Names = {
    months: Array.from({ length: 12 }, (_, month) =>
      (['long', 'short'] as const).map((length) =>
        spelled({ day: 'numeric', month: length }, 'month', Date.UTC(2024, month, 1)),
      ),
    ),
    weekdays: Array.from({ length: 7 }, (_, day) =>
      (['long', 'short'] as const).map((length) => spelled({ weekday: length }, 'weekday', Date.UTC(2024, 0, 1 + day))),
    ),
  };
  known.set(locale, made);
  return made;
}

function dateOf(year: number, month: number, day: number): string | null {
  const date = new Date(Date.UTC(year, month - 1, day));
  // Years below 100 would be taken for those of the twentieth century.
  const isReal = year >= 1000 && date.getUTCMonth() === month - 1 && date.getUTCDate() === day;
  return isReal ? date.toISOString().slice(0, 10) : null;
}

/** What stands in a field for a date. */
export interface TypedDate {
  readonly text: string;
  /** Empty while the text is no date. */
  readonly read: string;
  /** The date that counted when it was typed. */
  readonly before: string;
}

export const typeDate = (text: string, before: string, locale: string): TypedDate => ({
  text,
  read: readDate(text, locale) ?? '',
  before,
});

/** Whether the text still stands for the date that counts: a date chosen elsewhere takes its place. */
export const isCurrent = (typed: TypedDate, value: string): boolean =>
  value === typed.read || (typed.read === '' && value === typed.before);

/** Whether something stands in the field that is no date. */
export const isUnread = ({ text, read }: TypedDate): boolean => read === '' && text.trim() !== '';
