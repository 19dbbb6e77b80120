import { parseRecurrence, startsOf, type RecurrenceRule } from '@archwright/calendar';
import type { RecurringDeparture } from '@archwright/contracts';
import { birthDate, shortDate } from '../time/wording.js';
import { localDateOf, startOfDayMs } from '../time/zone.js';
import { locale } from '../words/language.js';
import { listed } from '../words/plural.js';
import { recurrenceWords as words, type RulePlace } from '../words/setup.js';
import { weekdayWords } from '../words/weekdays.js';

const WEEKDAY_CODES = ['MO', 'TU', 'WE', 'TH', 'FR', 'SA', 'SU'];
const MONTHS = Array.from({ length: 12 }, (_, month) =>
  new Intl.DateTimeFormat(locale, { month: 'long', timeZone: 'UTC' }).format(Date.UTC(2027, month, 1)),
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
export function ruleInWords(rrule: string, place: RulePlace = 'within'): string {
  const rule = readRule(rrule);
  if (typeof rule === 'string') return rule;
  const { frequency, interval, byMonth, count, until } = rule;
  return words.rule({
    every: words.every(frequency, interval, place),
    days: daysWords(rule),
    months: listed(byMonth.map((month) => MONTHS[month - 1] ?? '')),
    times: count ?? null,
    until: until === undefined ? null : birthDate(new Date(until.ms).toISOString().slice(0, 10)),
  });
}

function readRule(rrule: string): RecurrenceRule | string {
  try {
    return parseRecurrence(rrule);
  } catch (error) {
    return error instanceof Error ? error.message : rrule;
  }
}

function daysWords({ byDay, byMonthDay, bySetPos, byWeekNo, byYearDay }: RecurrenceRule): string {
  const days = byDay.every(({ nth }) => nth === 0)
    ? runsOf(byDay.map(({ weekday }) => weekday))
    : byDay.map(numberedDay);
  const dates = byMonthDay.map((day) => (day < 0 ? words.dateFromEnd : words.date)(words.nth(day)));
  const on = listed([...days, ...dates, ...byWeekNo.map(words.week), ...byYearDay.map(words.dayOfYear)]);
  return on === '' || bySetPos.length === 0 ? on : words.chosen(listed(bySetPos.map(words.nth)), on);
}

const dayName = (weekday: number): string => weekdayWords.long[weekday - 1] ?? '';

const numberedDay = ({ weekday, nth }: RecurrenceRule['byDay'][number]): string =>
  nth === 0 ? dayName(weekday) : words.numberedDay(words.nth(nth), dayName(weekday));

/** "Monday to Friday": three days or more in a row are said by the first and the last. */
function runsOf(weekdays: readonly number[]): string[] {
  const runs: number[][] = [];
  for (const day of [...weekdays].sort()) {
    const run = runs.at(-1);
    if (run?.at(-1) === day - 1) run.push(day);
    else runs.push([day]);
  }
  return runs.flatMap((run) =>
    run.length < 3 ? run.map(dayName) : [words.run(dayName(run[0] ?? 0), dayName(run.at(-1) ?? 0))],
  );
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
export function timeInWords(
  { startsLocal, rrule, minutes }: RecurringDeparture & { minutes?: number },
  place: RulePlace = 'alone',
): string {
  const rule = ruleInWords(rrule, place);
  return minutes === undefined
    ? words.departure(rule, startsLocal)
    : words.hours(rule, startsLocal, endOf(startsLocal, minutes));
}
