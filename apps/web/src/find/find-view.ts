const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];

/** A real date of the calendar, or null (31 February is none). */
function realDate(year: number, month: number, day: number): string | null {
  const text = `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;
  const ms = Date.parse(`${text}T00:00:00Z`);
  return Number.isNaN(ms) || new Date(ms).toISOString().slice(0, 10) !== text ? null : text;
}

/**
 * A day that a person typed: `2027-01-05`, `5 Jan`, `5 January 2027`, `5.1.2027`, `05/01/2027` (day first). Without a year the nearest such day is meant,
 * up to half a year back or ahead. Null when the text is no date.
 */
export function typedDate(text: string, today: string): string | null {
  const trimmed = text.trim().toLowerCase();
  const iso = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(trimmed);
  if (iso) return realDate(Number(iso[1]), Number(iso[2]), Number(iso[3]));
  const figures = /^(\d{1,2})[./](\d{1,2})[./](\d{4})$/.exec(trimmed);
  if (figures) return realDate(Number(figures[3]), Number(figures[2]), Number(figures[1]));
  const words = /^(?:[a-z]+,?\s+)?(\d{1,2})\.?\s+([a-z]{3,9})\.?(?:\s+(\d{4}))?$/.exec(trimmed);
  if (!words) return null;
  const month = MONTHS.indexOf((words[2] ?? '').slice(0, 3)) + 1;
  if (month === 0) return null;
  const day = Number(words[1]);
  if (words[3]) return realDate(Number(words[3]), month, day);
  const thisYear = Number(today.slice(0, 4));
  const candidates = [thisYear - 1, thisYear, thisYear + 1].flatMap((year) => realDate(year, month, day) ?? []);
  const distance = (date: string): number => Math.abs(Date.parse(date) - Date.parse(today));
  return candidates.sort((a, b) => distance(a) - distance(b))[0] ?? null;
}

/** Nobody plans or looks up visits further from today than this. */
const DAY_BOARD_YEARS = 10;

/** Whether the board of a day is worth a link: a birth date is a day too. */
export const isDayOfPractice = (day: string, today: string): boolean =>
  Math.abs(Number(day.slice(0, 4)) - Number(today.slice(0, 4))) <= DAY_BOARD_YEARS;
