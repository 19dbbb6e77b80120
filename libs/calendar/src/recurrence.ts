import type { Interval } from './intervals.js';
import { DAY_MS, MINUTE_MS, weekdayOfDay } from './local-date.js';
import { daysOfPeriod, type Period } from './recurrence-days.js';
import type { RecurrenceRule } from './recurrence-rule.js';

/**
 * Instances of a rule on the wall clock, ascending: those from `window.startMs` to before `window.endMs`, and none
 * before the first start. COUNT and UNTIL are left to the caller, who knows which instances the clock skips.
 *
 * Written here rather than taken from a library so that the work is bounded by the window: libraries look for the next
 * instance of a rule that never holds (30 February) up to the year 9999, and such a rule can come in from outside.
 *
 * @param firstWall wall milliseconds of DTSTART
 */
export function* instancesOf(rule: RecurrenceRule, firstWall: number, window: Interval): Generator<number> {
  const firstDay = Math.floor(firstWall / DAY_MS);
  const fromWall = Math.max(firstWall, window.startMs);
  const endDay = Math.ceil(window.endMs / DAY_MS);
  const times = timesOfDay(rule, firstWall - firstDay * DAY_MS);
  for (const period of periodsOf(rule, firstDay, Math.floor(fromWall / DAY_MS), endDay)) {
    const days = daysOfPeriod(rule, firstDay, period);
    const walls = days.flatMap((day) => times.map((time) => day * DAY_MS + time));
    for (const wall of rule.bySetPos.length > 0 ? atPositions(walls, rule.bySetPos) : walls) {
      if (wall >= window.endMs) return;
      if (wall >= fromWall) yield wall;
    }
  }
}

/** Milliseconds into the day, ascending. */
function timesOfDay({ byHour, byMinute }: RecurrenceRule, ofFirst: number): number[] {
  const minuteOfFirst = Math.floor(ofFirst / MINUTE_MS);
  const hours = byHour.length > 0 ? ascending(byHour) : [Math.floor(minuteOfFirst / 60)];
  const minutes = byMinute.length > 0 ? ascending(byMinute) : [minuteOfFirst % 60];
  return hours.flatMap((hour) => minutes.map((minute) => (hour * 60 + minute) * MINUTE_MS));
}

function ascending(values: readonly number[]): number[] {
  return [...new Set(values)].sort((a, b) => a - b);
}

/** The nth instances of one period (negative: from its end). */
function atPositions(walls: readonly number[], positions: readonly number[]): number[] {
  const chosen = positions.map((position) => walls.at(position > 0 ? position - 1 : position));
  return ascending(chosen.filter((wall) => wall !== undefined));
}

/** Periods of the rule's frequency, every `interval`th from that of the first start, which may touch `[fromDay, endDay)`. */
function* periodsOf(rule: RecurrenceRule, firstDay: number, fromDay: number, endDay: number): Generator<Period> {
  const { periodAt, indexOf } = PERIODS[rule.frequency](rule.weekStart);
  const first = indexOf(firstDay);
  const skipped = Math.max(0, Math.floor((indexOf(fromDay) - 1 - first) / rule.interval));
  for (let index = first + skipped * rule.interval; ; index += rule.interval) {
    const period = periodAt(index);
    // A week of the year may begin in the old year: periods of a year are looked at some days early.
    if (period.startDay - 7 >= endDay) return;
    yield period;
  }
}

interface PeriodKind {
  readonly indexOf: (day: number) => number;
  readonly periodAt: (index: number) => Period;
}

const monthStart = (index: number): number => Date.UTC(Math.floor(index / 12), ((index % 12) + 12) % 12, 1) / DAY_MS;
const yearOf = (day: number): number => new Date(day * DAY_MS).getUTCFullYear();

const PERIODS: Readonly<Record<RecurrenceRule['frequency'], (weekStart: number) => PeriodKind>> = {
  DAILY: () => ({ indexOf: (day) => day, periodAt: (day) => ({ startDay: day, endDay: day + 1 }) }),
  WEEKLY: (weekStart) => {
    // Day number of a day on which a week starts, near 1970.
    const anchor = weekStart - weekdayOfDay(0);
    return {
      indexOf: (day) => Math.floor((day - anchor) / 7),
      periodAt: (week) => ({ startDay: anchor + week * 7, endDay: anchor + week * 7 + 7 }),
    };
  },
  MONTHLY: () => ({
    indexOf: (day) => yearOf(day) * 12 + new Date(day * DAY_MS).getUTCMonth(),
    periodAt: (month) => ({ startDay: monthStart(month), endDay: monthStart(month + 1) }),
  }),
  YEARLY: () => ({
    indexOf: yearOf,
    periodAt: (year) => ({ startDay: monthStart(year * 12), endDay: monthStart(year * 12 + 12) }),
  }),
};
