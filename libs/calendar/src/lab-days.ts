import { CalendarTextError, NoLabWorkingDayError, requireWhole } from './errors.js';
import { dateOfDay, dayNumber, weekday, weekdayOfDay } from './local-date.js';
import { localDate, toInstantMs } from './zone.js';

/** Which days a laboratory works, and until when an arrival counts as that day's. */
export interface LabDays {
  readonly zone: string;
  /** 'HH:mm' of the laboratory's own clock; work that is there at this very minute counts today. */
  readonly cutOffLocal: string;
  /** ISO 8601 weekdays: Monday is 1, Sunday is 7. */
  readonly openWeekdays: readonly number[];
  /** Local dates 'YYYY-MM-DD' on which it does not work. */
  readonly closedOn: readonly string[];
}

/** A closure longer than this is taken for a mistake in the calendar. */
const SEARCHED_DAYS = 366;

/** Whether the laboratory works on a date. */
export function isLabWorkingDay(date: string, labDays: LabDays): boolean {
  return labDays.openWeekdays.includes(weekday(date)) && !labDays.closedOn.includes(date);
}

/** `day` itself when the laboratory works on it, else the next day on which it does, in days since 1970-01-01. */
function workingDayFrom(day: number, { openWeekdays, closedOn }: LabDays): number {
  for (let candidate = day; candidate < day + SEARCHED_DAYS; candidate++) {
    if (!openWeekdays.includes(weekdayOfDay(candidate))) continue;
    if (closedOn.length === 0 || !closedOn.includes(dateOfDay(candidate))) return candidate;
  }
  throw new NoLabWorkingDayError(dateOfDay(day), SEARCHED_DAYS);
}

/**
 * The laboratory working day as which an arrival counts: its own day up to the cut-off, else the next one.
 *
 * @param ms arrival at the laboratory
 * @throws {CalendarTextError} when the cut-off is not 'HH:mm'
 * @throws {NoLabWorkingDayError} when none comes within a year
 */
export function acceptedOn(ms: number, labDays: LabDays): string {
  if (!/^([01]\d|2[0-3]):[0-5]\d$/.test(labDays.cutOffLocal)) {
    throw new CalendarTextError('a cut-off time', labDays.cutOffLocal, 'HH:mm, such as 12:00');
  }
  const date = localDate(ms, labDays.zone);
  const cutOffMs = toInstantMs(`${date}T${labDays.cutOffLocal}`, labDays.zone);
  return dateOfDay(workingDayFrom(dayNumber(date) + (ms <= cutOffMs ? 0 : 1), labDays));
}

/**
 * The date on which work of `days` laboratory working days is ready. The day of acceptance is day 0.
 *
 * @param date day of acceptance; when the laboratory does not work on it, its next working day takes its place
 * @param days whole laboratory working days, 0 or more
 * @throws {NoLabWorkingDayError} when the calendar has no further working day within a year
 */
export function addLabWorkingDays(date: string, days: number, labDays: LabDays): string {
  return dateOfDay(labWorkingDayAfter(dayNumber(date), days, labDays));
}

/** {@link addLabWorkingDays} in days since 1970-01-01, for the many at once that a table holds. */
export function labWorkingDayAfter(day: number, days: number, labDays: LabDays): number {
  requireWhole('The number of laboratory working days', days, 0);
  let on = workingDayFrom(day, labDays);
  for (let passed = 0; passed < days; passed++) on = workingDayFrom(on + 1, labDays);
  return on;
}
