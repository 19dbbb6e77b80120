import { RecurrenceRuleError } from './errors.js';
import { DAY_MS } from './local-date.js';

const FREQUENCIES = ['DAILY', 'WEEKLY', 'MONTHLY', 'YEARLY'] as const;
export type Frequency = (typeof FREQUENCIES)[number];

/** A BYDAY entry: ISO 8601 weekday, and which one of the month or year (negative: from its end; 0: every). */
export interface WeekdayRef {
  readonly weekday: number;
  readonly nth: number;
}

/** A parsed RRULE value. Empty lists stand for parts that are not given. */
export interface RecurrenceRule {
  readonly frequency: Frequency;
  readonly interval: number;
  readonly count?: number;
  /** Epoch milliseconds when `isUtc`, else wall milliseconds; an occurrence at it belongs to the rule. */
  readonly until?: { readonly ms: number; readonly isUtc: boolean };
  readonly byMonth: readonly number[];
  readonly byWeekNo: readonly number[];
  readonly byYearDay: readonly number[];
  readonly byMonthDay: readonly number[];
  readonly byDay: readonly WeekdayRef[];
  readonly byHour: readonly number[];
  readonly byMinute: readonly number[];
  readonly bySetPos: readonly number[];
  /** ISO 8601 weekday on which a week starts. */
  readonly weekStart: number;
}

const WEEKDAYS = ['MO', 'TU', 'WE', 'TH', 'FR', 'SA', 'SU'];
const NUMBER_PARTS: Readonly<Record<string, { from: number; to: number; signed: boolean }>> = {
  BYMONTH: { from: 1, to: 12, signed: false },
  BYWEEKNO: { from: 1, to: 53, signed: true },
  BYYEARDAY: { from: 1, to: 366, signed: true },
  BYMONTHDAY: { from: 1, to: 31, signed: true },
  BYHOUR: { from: 0, to: 23, signed: false },
  BYMINUTE: { from: 0, to: 59, signed: false },
  BYSETPOS: { from: 1, to: 366, signed: true },
};
const OTHER_PARTS = ['FREQ', 'INTERVAL', 'COUNT', 'UNTIL', 'BYDAY', 'WKST'];

/**
 * Reads the value of an RRULE property (RFC 5545, section 3.3.10) for days and longer periods. Times finer than a
 * minute and the frequencies HOURLY, MINUTELY and SECONDLY are refused: nothing that a practice keeps recurs so.
 *
 * @param text such as 'FREQ=WEEKLY;BYDAY=MO,TU'
 * @throws {RecurrenceRuleError} naming the part that is wrong and what it accepts
 */
export function parseRecurrence(text: string): RecurrenceRule {
  const refuse = (reason: string, accepted: string): never => {
    throw new RecurrenceRuleError(text, reason, accepted);
  };
  const parts = new Map<string, string>();
  for (const part of text.toUpperCase().split(';')) {
    const [name = '', value = '', ...rest] = part.split('=');
    if (value === '' || rest.length > 0) refuse(`"${part}" is not a part`, 'NAME=VALUE parts joined by semicolons');
    if (!OTHER_PARTS.includes(name) && !(name in NUMBER_PARTS)) {
      refuse(`${name} is not known`, [...OTHER_PARTS, ...Object.keys(NUMBER_PARTS)].join(', '));
    }
    if (parts.has(name)) refuse(`${name} is given twice`, 'each part once');
    parts.set(name, value);
  }

  const numbers = (name: string): number[] => {
    const range = NUMBER_PARTS[name];
    const value = parts.get(name);
    if (!range || value === undefined) return [];
    return value.split(',').map((item) => {
      const number = /^[+-]?\d{1,3}$/.test(item) ? Number(item) : NaN;
      const size = range.signed ? Math.abs(number) : number;
      if (size >= range.from && size <= range.to) return number;
      const sign = range.signed ? ', or the same with a minus, counted from the end' : '';
      return refuse(`${name} holds "${item}"`, `whole numbers ${String(range.from)} to ${String(range.to)}${sign}`);
    });
  };
  const positive = (name: string): number | undefined => {
    const value = parts.get(name);
    if (value === undefined) return undefined;
    return /^[1-9]\d{0,5}$/.test(value) ? Number(value) : refuse(`${name} is "${value}"`, 'a whole number 1 to 999999');
  };
  const weekdayOf = (code: string, part: string): number => {
    const index = WEEKDAYS.indexOf(code);
    return index < 0 ? refuse(`${part} holds "${code}"`, WEEKDAYS.join(', ')) : index + 1;
  };

  const frequency =
    FREQUENCIES.find((each) => each === parts.get('FREQ')) ??
    refuse(`FREQ is ${parts.get('FREQ') ?? 'missing'}`, FREQUENCIES.join(', '));
  const byDay = (parts.get('BYDAY')?.split(',') ?? []).map((item): WeekdayRef => {
    const [, nth = '', code = item] = /^([+-]?[1-9]\d?)?([A-Z]{2})$/.exec(item) ?? [];
    if (Math.abs(Number(nth)) > 53)
      refuse(`BYDAY holds "${item}"`, 'a number from 1 to 53, or -1 to -53, before a day');
    return { weekday: weekdayOf(code, 'BYDAY'), nth: Number(nth) };
  });
  const untilText = parts.get('UNTIL');
  const until = untilText === undefined ? undefined : readUntil(untilText, refuse);
  const count = positive('COUNT');
  const rule: RecurrenceRule = {
    frequency,
    interval: positive('INTERVAL') ?? 1,
    ...(count === undefined ? {} : { count }),
    ...(until === undefined ? {} : { until }),
    byMonth: numbers('BYMONTH'),
    byWeekNo: numbers('BYWEEKNO'),
    byYearDay: numbers('BYYEARDAY'),
    byMonthDay: numbers('BYMONTHDAY'),
    byDay,
    byHour: numbers('BYHOUR'),
    byMinute: numbers('BYMINUTE'),
    bySetPos: numbers('BYSETPOS'),
    weekStart: weekdayOf(parts.get('WKST') ?? 'MO', 'WKST'),
  };
  checkTogether(rule, refuse);
  return rule;
}

type Refuse = (reason: string, accepted: string) => never;

/** Parts that RFC 5545, section 3.3.10, does not allow together. */
function checkTogether(rule: RecurrenceRule, refuse: Refuse): void {
  const { frequency } = rule;
  if (rule.count !== undefined && rule.until !== undefined) refuse('COUNT and UNTIL are both given', 'one of them');
  if (rule.byWeekNo.length > 0 && frequency !== 'YEARLY') refuse(`BYWEEKNO with ${frequency}`, 'BYWEEKNO with YEARLY');
  if (rule.byYearDay.length > 0 && frequency !== 'YEARLY')
    refuse(`BYYEARDAY with ${frequency}`, 'BYYEARDAY with YEARLY');
  if (rule.byMonthDay.length > 0 && frequency === 'WEEKLY') refuse('BYMONTHDAY with WEEKLY', 'BYDAY with WEEKLY');
  if (rule.byDay.some((each) => each.nth !== 0)) {
    if (frequency !== 'MONTHLY' && frequency !== 'YEARLY') {
      refuse(`a numbered weekday with ${frequency}`, 'numbered weekdays with MONTHLY or YEARLY');
    }
    if (rule.byWeekNo.length > 0) refuse('a numbered weekday with BYWEEKNO', 'weekdays without a number with BYWEEKNO');
  }
  const others = [rule.byMonth, rule.byWeekNo, rule.byYearDay, rule.byMonthDay, rule.byDay, rule.byHour, rule.byMinute];
  if (rule.bySetPos.length > 0 && others.every((part) => (part as readonly unknown[]).length === 0)) {
    refuse('BYSETPOS alone', 'BYSETPOS beside another BY part');
  }
}

/** UNTIL in UTC, as RFC 5545 asks for beside a zone; also as wall time, or as a date whose whole day counts. */
function readUntil(text: string, refuse: Refuse): { ms: number; isUtc: boolean } {
  const [, date, time, utc] = /^(\d{8})(?:T(\d{6})(Z?))?$/.exec(text) ?? [];
  if (date !== undefined) {
    const iso = `${date.slice(0, 4)}-${date.slice(4, 6)}-${date.slice(6)}`;
    const clock = time ?? '000000';
    const ms = Date.parse(`${iso}T${clock.slice(0, 2)}:${clock.slice(2, 4)}:${clock.slice(4)}Z`);
    // Date.parse may roll 31 June over to July; a day that rolled is not the day that was written.
    if (!Number.isNaN(ms) && new Date(ms).toISOString().startsWith(iso)) {
      return time === undefined ? { ms: ms + DAY_MS - 1, isUtc: false } : { ms, isUtc: utc === 'Z' };
    }
  }
  return refuse(
    `UNTIL is "${text}"`,
    'YYYYMMDDTHHMMSSZ in UTC, YYYYMMDDTHHMMSS by the wall clock, or a last day YYYYMMDD',
  );
}
