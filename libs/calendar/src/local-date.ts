import { CalendarNumberError, CalendarTextError } from './errors.js';

export const DAY_MS = 86_400_000;
export const MINUTE_MS = 60_000;
const DATE = /^([1-9]\d{3})-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/;
const FIRST_DAY = -354_285; // 1000-01-01
const LAST_DAY = 2_932_896; // 9999-12-31
const WALL_TIME = /^([1-9]\d{3}-\d{2}-\d{2})T([01]\d|2[0-3]):([0-5]\d)$/;

/**
 * Days from 1970-01-01 to a date of the proleptic Gregorian calendar.
 *
 * @param date 'YYYY-MM-DD', years 1000 to 9999
 * @throws {CalendarTextError} when it is not such a date (30 February included)
 */
export function dayNumber(date: string): number {
  const [, year, month, day] = DATE.exec(date) ?? [];
  const ms = Date.UTC(Number(year), Number(month) - 1, Number(day));
  if (Number.isNaN(ms) || dateOfDay(ms / DAY_MS) !== date) {
    throw new CalendarTextError('a date', date, 'YYYY-MM-DD, a day that exists, such as 2026-03-29');
  }
  return ms / DAY_MS;
}

/**
 * The date 'YYYY-MM-DD' that lies `day` days after 1970-01-01.
 *
 * @throws {CalendarNumberError} outside the years 1000 to 9999
 */
export function dateOfDay(day: number): string {
  if (!Number.isInteger(day) || day < FIRST_DAY || day > LAST_DAY) {
    throw new CalendarNumberError('A day since 1970-01-01', day, 'a whole number of the years 1000 to 9999');
  }
  return new Date(day * DAY_MS).toISOString().slice(0, 10);
}

/** The date `days` calendar days after `date` (before it when negative). */
export function addDays(date: string, days: number): string {
  return dateOfDay(dayNumber(date) + days);
}

/** Weekday of a date by ISO 8601: Monday is 1, Sunday is 7. */
export function weekday(date: string): number {
  return weekdayOfDay(dayNumber(date));
}

/** Weekday by ISO 8601 of a day number. 1970-01-01 was a Thursday. */
export function weekdayOfDay(day: number): number {
  return ((((day + 3) % 7) + 7) % 7) + 1;
}

/**
 * A wall time as the milliseconds it would have if its place kept UTC: arithmetic on it is arithmetic on the wall clock.
 *
 * @param local 'YYYY-MM-DDTHH:mm'
 */
export function wallMs(local: string): number {
  const [, date, hour, minute] = WALL_TIME.exec(local) ?? [];
  if (date === undefined) {
    throw new CalendarTextError('a local time', local, 'YYYY-MM-DDTHH:mm without a zone, such as 2026-03-29T09:00');
  }
  return dayNumber(date) * DAY_MS + (Number(hour) * 60 + Number(minute)) * MINUTE_MS;
}

/** 'YYYY-MM-DDTHH:mm' of wall milliseconds; seconds are cut. */
export function wallText(wall: number): string {
  return new Date(wall).toISOString().slice(0, 16);
}
