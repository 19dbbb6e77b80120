import { parseRecurrence, startsOf, type RecurrenceRule } from '@archwright/calendar';
import type { RecurringDeparture } from '@archwright/contracts';
import { shortDate, tickDate } from '../time/wording.js';
import { localDateOf, startOfDayMs } from '../time/zone.js';
import { listed } from '../words/plural.js';
import { setupWords as words } from '../words/setup.js';

const WEEKDAY_CODES = ['MO', 'TU', 'WE', 'TH', 'FR', 'SA', 'SU'];
const MONTHS = Array.from({ length: 12 }, (_, month) =>
  new Intl.DateTimeFormat('en-GB', { month: 'long', timeZone: 'UTC' }).format(Date.UTC(2027, month, 1)),
);
const LOOKED_AHEAD_DAYS = 800;
const DAY_MS = 86_400_000;

/** Weekdays and how many weeks lie between: all that most hours need. */
export interface WeeklyChoice {
  readonly days: readonly number[];
  readonly every: number;
}

/** A rule as weekdays; null for one that says more, or that is not understood. */
export function weeklyOf(rrule: string): WeeklyChoice | null {
  const rule = readRule(rrule);
  if (typeof rule === 'string' || rule.frequency !== 'WEEKLY') return null;
  const says = [rule.byMonth, rule.byHour, rule.byMinute, rule.bySetPos];
  const isPlain = says.every((part) => part.length === 0) && rule.count === undefined && rule.until === undefined;
  if (!isPlain || rule.byDay.length === 0 || rule.weekStart !== 1) return null;
  return { days: rule.byDay.map(({ weekday }) => weekday).sort(), every: rule.interval };
}

export function ruleOfWeekly({ days, every }: WeeklyChoice): string {
  const interval = every > 1 ? `;INTERVAL=${String(every)}` : '';
  const codes = [...days].sort().map((day) => WEEKDAY_CODES[day - 1] ?? '');
  return `FREQ=WEEKLY${interval};BYDAY=${codes.join(',')}`;
}

/** A rule in words, such as "every second week on Monday and Friday"; what is wrong with it when it is not understood. */
export function ruleInWords(rrule: string): string {
  const rule = readRule(rrule);
  if (typeof rule === 'string') return rule;
  const parts = [everyWords(rule), daysWords(rule), monthsWords(rule), endWords(rule)];
  return parts.filter((part) => part !== '').join(' ');
}

function readRule(rrule: string): RecurrenceRule | string {
  try {
    return parseRecurrence(rrule);
  } catch (error) {
    return error instanceof Error ? error.message : rrule;
  }
}

const UNITS = { DAILY: 'day', WEEKLY: 'week', MONTHLY: 'month', YEARLY: 'year' } as const;

function everyWords({ frequency, interval, byDay }: RecurrenceRule): string {
  if (interval === 2) return `every second ${UNITS[frequency]}`;
  if (interval > 2) return `every ${String(interval)} ${UNITS[frequency]}s`;
  return frequency === 'WEEKLY' && byDay.length > 0 ? 'every week' : `every ${UNITS[frequency]}`;
}

function daysWords({ byDay, byMonthDay, bySetPos, byWeekNo, byYearDay }: RecurrenceRule): string {
  const days = byDay.every(({ nth }) => nth === 0)
    ? runsOf(byDay.map(({ weekday }) => weekday))
    : byDay.map(numberedDay);
  const dates = byMonthDay.map((day) => `the ${ordinal(day)}${day < 0 ? ' day' : ''}`);
  const weeks = byWeekNo.map((week) => `week ${String(week)}`);
  const ofYear = byYearDay.map((day) => `day ${String(day)} of the year`);
  const on = [...days, ...dates, ...weeks, ...ofYear];
  if (on.length === 0) return '';
  const chosen = bySetPos.length === 0 ? '' : `the ${listed(bySetPos.map(ordinal))} of `;
  return `on ${chosen}${listed(on)}`;
}

const dayName = (weekday: number): string => words.days[weekday - 1] ?? '';

const numberedDay = ({ weekday, nth }: RecurrenceRule['byDay'][number]): string =>
  nth === 0 ? dayName(weekday) : `the ${ordinal(nth)} ${dayName(weekday)}`;

/** "Monday to Friday": three days or more in a row are said by the first and the last. */
function runsOf(weekdays: readonly number[]): string[] {
  const runs: number[][] = [];
  for (const day of [...weekdays].sort()) {
    const run = runs.at(-1);
    if (run?.at(-1) === day - 1) run.push(day);
    else runs.push([day]);
  }
  return runs.flatMap((run) =>
    run.length < 3 ? run.map(dayName) : [`${dayName(run[0] ?? 0)} to ${dayName(run.at(-1) ?? 0)}`],
  );
}

function ordinal(n: number): string {
  if (n === -1) return 'last';
  if (n < 0) return `${ordinal(-n)} from the end`;
  const ending = n % 100 > 10 && n % 100 < 14 ? 'th' : (['th', 'st', 'nd', 'rd'][n % 10] ?? 'th');
  return `${String(n)}${ending}`;
}

const monthsWords = ({ byMonth }: RecurrenceRule): string =>
  byMonth.length === 0 ? '' : `in ${listed(byMonth.map((month) => MONTHS[month - 1] ?? ''))}`;

function endWords({ count, until }: RecurrenceRule): string {
  if (count !== undefined) return `${String(count)} times`;
  if (until === undefined) return '';
  const date = new Date(until.ms).toISOString().slice(0, 10);
  return `until ${tickDate(date)} ${date.slice(0, 4)}`;
}

/** The next dates on which a time comes up, from `today` on; none while something in it is not understood. */
export function nextDates(time: RecurringDeparture, zone: string, today: string, howMany: number): string[] {
  const { startOn, startsLocal, rrule, exceptLocal } = time;
  try {
    const startMs = startOfDayMs(today, zone);
    const window = { startMs, endMs: startMs + LOOKED_AHEAD_DAYS * DAY_MS };
    const starts = startsOf({ zone, minutes: 5, startsLocal: `${startOn}T${startsLocal}`, rrule, exceptLocal }, window);
    return starts.slice(0, howMany).map((ms) => shortDate(localDateOf(ms, zone), today));
  } catch {
    // The field itself says what is wrong.
    return [];
  }
}

/** "09:00" and 480 minutes later; empty while the time is not typed in full. */
export function endOf(startsLocal: string, minutes: number): string {
  if (!isTime(startsLocal)) return '';
  const end = (minutesOf(startsLocal) + minutes) % 1440;
  return `${String(Math.floor(end / 60)).padStart(2, '0')}:${String(end % 60).padStart(2, '0')}`;
}

/**
 * From one wall time to the next time the other is reached; a whole day when they are the same.
 *
 * @param otherwise while one of them is not typed in full
 */
export function minutesBetween(from: string, until: string, otherwise: number): number {
  if (!isTime(from) || !isTime(until)) return otherwise;
  return ((minutesOf(until) - minutesOf(from) + 1440 - 1) % 1440) + 1;
}

const isTime = (text: string): boolean => /^\d\d:\d\d$/.test(text);

const minutesOf = (time: string): number => Number(time.slice(0, 2)) * 60 + Number(time.slice(3, 5));

/** "Every week on Monday, 09:00 to 17:00". */
export function timeInWords({ startsLocal, rrule, minutes }: RecurringDeparture & { minutes?: number }): string {
  const days = ruleInWords(rrule);
  const said = `${days.charAt(0).toUpperCase()}${days.slice(1)}`;
  return minutes === undefined
    ? `${said}, ${startsLocal}`
    : `${said}, ${startsLocal} to ${endOf(startsLocal, minutes)}`;
}
