import { DAY_MS, weekdayOfDay } from './local-date.js';
import type { RecurrenceRule, WeekdayRef } from './recurrence-rule.js';

/** Day numbers `[startDay, endDay)` of one day, week, month or year. */
export interface Period {
  readonly startDay: number;
  readonly endDay: number;
}

/** A day with what the BY parts ask about it. */
interface Day {
  readonly number: number;
  readonly weekday: number;
  readonly month: number;
  readonly monthDay: number;
  readonly monthLength: number;
  readonly yearDay: number;
  readonly yearLength: number;
}

/**
 * Days of one period that the date parts of a rule choose, ascending (RFC 5545, section 3.3.10, table of BYxxx parts).
 * Every part narrows the days of the period; what no part says is taken from the first start.
 */
export function daysOfPeriod(rule: RecurrenceRule, firstDay: number, period: Period): number[] {
  const asked = completed(rule, dayOf(firstDay));
  const chosen: number[] = [];
  // Days of week 1 may lie in the old year and those of week 53 in the new one (RFC 5545 counts them to BYWEEKNO).
  const margin = rule.byWeekNo.length > 0 ? 6 : 0;
  for (let number = period.startDay - margin; number < period.endDay + margin; number++) {
    if (isChosen(asked, dayOf(number), period)) chosen.push(number);
  }
  return chosen;
}

function dayOf(number: number): Day {
  const date = new Date(number * DAY_MS);
  const year = date.getUTCFullYear();
  const month = date.getUTCMonth();
  const newYear = Date.UTC(year, 0, 1) / DAY_MS;
  return {
    number,
    weekday: weekdayOfDay(number),
    month: month + 1,
    monthDay: date.getUTCDate(),
    monthLength: new Date(Date.UTC(year, month + 1, 0)).getUTCDate(),
    yearDay: number - newYear + 1,
    yearLength: Date.UTC(year + 1, 0, 1) / DAY_MS - newYear,
  };
}

/** The rule with the parts that the first start stands for. */
function completed(rule: RecurrenceRule, first: Day): RecurrenceRule {
  const { frequency, byMonth, byWeekNo, byYearDay, byMonthDay, byDay } = rule;
  if (frequency === 'DAILY' || byYearDay.length > 0 || byMonthDay.length > 0 || byDay.length > 0) return rule;
  if (frequency === 'WEEKLY' || byWeekNo.length > 0) return { ...rule, byDay: [{ weekday: first.weekday, nth: 0 }] };
  const onFirstMonth = frequency === 'YEARLY' && byMonth.length === 0;
  return { ...rule, byMonthDay: [first.monthDay], ...(onFirstMonth ? { byMonth: [first.month] } : {}) };
}

function isChosen(rule: RecurrenceRule, day: Day, period: Period): boolean {
  const { byMonth, byWeekNo, byYearDay, byMonthDay, byDay } = rule;
  if (byMonth.length > 0 && !byMonth.includes(day.month)) return false;
  if (byMonthDay.length > 0 && !fits(byMonthDay, day.monthDay, day.monthLength)) return false;
  if (byYearDay.length > 0 && !fits(byYearDay, day.yearDay, day.yearLength)) return false;
  if (byWeekNo.length > 0 && !isInWeeks(rule, day.number, period)) return false;
  return byDay.length === 0 || byDay.some((ref) => isWeekday(ref, rule, day));
}

/** Whether a 1-based place of `length` is among `wanted`, which may count from the end. */
function fits(wanted: readonly number[], place: number, length: number): boolean {
  return wanted.includes(place) || wanted.includes(place - length - 1);
}

/** A number beside a weekday counts within the month, and within the year for YEARLY without BYMONTH. */
function isWeekday(ref: WeekdayRef, { frequency, byMonth }: RecurrenceRule, day: Day): boolean {
  if (ref.weekday !== day.weekday) return false;
  if (ref.nth === 0) return true;
  const ofYear = frequency === 'YEARLY' && byMonth.length === 0;
  const place = (ofYear ? day.yearDay : day.monthDay) - 1;
  const length = ofYear ? day.yearLength : day.monthLength;
  return ref.nth > 0 ? Math.floor(place / 7) + 1 === ref.nth : Math.floor((length - 1 - place) / 7) + 1 === -ref.nth;
}

/** Week 1 of a year is the first week with four or more of its days in that year (RFC 5545, BYWEEKNO). */
function isInWeeks({ byWeekNo, weekStart }: RecurrenceRule, day: number, year: Period): boolean {
  const firstWeekStart = weekOneStart(year.startDay, weekStart);
  const weeks = (weekOneStart(year.endDay, weekStart) - firstWeekStart) / 7;
  const week = Math.floor((day - firstWeekStart) / 7) + 1;
  return week >= 1 && week <= weeks && fits(byWeekNo, week, weeks);
}

function weekOneStart(yearStart: number, weekStart: number): number {
  // The fourth day of the year lies in week 1 whatever day the week starts on.
  const fourth = yearStart + 3;
  return fourth - ((weekdayOfDay(fourth) - weekStart + 7) % 7);
}
