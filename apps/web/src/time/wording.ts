import { locale } from '../words/language.js';
import { timeWords } from '../words/time.js';
import { localDateOf, offsetMs } from './zone.js';

const cache = new Map<string, Intl.DateTimeFormat>();
function formatter(options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat {
  const key = JSON.stringify(options);
  const known = cache.get(key);
  if (known) return known;
  const made = new Intl.DateTimeFormat(locale, options);
  cache.set(key, made);
  return made;
}

function dateWords(date: string, today: string, weekday: 'long' | 'short', month: 'long' | 'short'): string {
  const year = date.slice(0, 4) === today.slice(0, 4) ? {} : ({ year: 'numeric' } as const);
  const words = formatter({ timeZone: 'UTC', weekday, day: 'numeric', month, ...year }).format(
    Date.parse(`${date}T00:00:00Z`),
  );
  // English writes the comma only beside short names; one way is easier to scan.
  return locale === 'en-GB' ? words.replace(',', '') : words;
}

/** "Thursday 28 January", with the year when it is not this year. */
export const longDate = (date: string, today: string): string => dateWords(date, today, 'long', 'long');

/** "Thu 28 Jan", with the year when it is not this year. */
export const shortDate = (date: string, today: string): string => dateWords(date, today, 'short', 'short');

/** "Thu 28 Jan 2027", always with its year: as a field shows the date that stands in it. */
export const fieldDate = (date: string): string => dateWords(date, '', 'short', 'short');

/** "January 2027", for the head of a calendar. */
export const monthAndYear = (date: string): string =>
  formatter({ timeZone: 'UTC', month: 'long', year: 'numeric' }).format(Date.parse(`${date}T00:00:00Z`));

/** "Thu 28 Jan" without a year, for the axis of a drawing. */
export const axisDate = (date: string): string => dateWords(date, date, 'short', 'short');

/** "28 Jan", for tick marks. */
export const tickDate = (date: string): string =>
  formatter({ timeZone: 'UTC', day: 'numeric', month: 'short' }).format(Date.parse(`${date}T00:00:00Z`));

/** "4 March 1949": a birth date always with its year, never with a weekday. */
export const birthDate = (date: string): string =>
  formatter({ timeZone: 'UTC', day: 'numeric', month: 'short', year: 'numeric' }).format(
    Date.parse(`${date}T00:00:00Z`),
  );

/** "09:20" on the wall of the zone. */
export const timeOfDay = (instant: string | number, zone: string): string =>
  formatter({ timeZone: zone, hour: '2-digit', minute: '2-digit', hourCycle: 'h23' }).format(
    typeof instant === 'number' ? instant : Date.parse(instant),
  );

/** "Thu 28 Jan, 09:20" on the wall of the zone. */
export const dateAndTime = (instant: string, zone: string, today: string): string =>
  timeWords.dateAndTime(shortDate(localDateOf(Date.parse(instant), zone), today), timeOfDay(instant, zone));

/** "London time" when the wall of `zone` reads differently from the viewer's at that instant, else nothing. */
export function zoneNote(instant: string, zone: string, viewer: string): string | null {
  const ms = Date.parse(instant);
  if (offsetMs(ms, zone) === offsetMs(ms, viewer)) return null;
  return timeWords.zone(zone.split('/').at(-1)?.replaceAll('_', ' ') ?? zone);
}

/** "9:42" or "1 h 05 min" until an instant; never negative. */
export function timeLeft(untilMs: number, nowMs: number): string {
  const seconds = Math.max(0, Math.floor((untilMs - nowMs) / 1000));
  const minutes = Math.floor(seconds / 60);
  if (minutes >= 60) {
    return timeWords.hoursAndMinutes(Math.floor(minutes / 60), String(minutes % 60).padStart(2, '0'));
  }
  return `${String(minutes)}:${String(seconds % 60).padStart(2, '0')}`;
}

/** "45 min", "3 h", "2 days": a length of time in the largest unit that says it in one figure. */
export function lengthOfTime(minutes: number): string {
  const size = Math.abs(minutes);
  if (size < 60) return timeWords.minutes(size);
  if (size < 24 * 60) return timeWords.hours(Math.round(size / 6) / 10);
  return timeWords.days(Math.round(size / 144) / 10);
}
