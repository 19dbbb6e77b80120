import { parseRecurrence } from '@archwright/calendar';
import { DomainError } from '@archwright/kernel';
import { z } from 'zod';
import { localTime, plannedDate } from './primitives.js';

/** A recurrence rule (RFC 5545) of days and longer periods, as far as hours and timetables need one. */
const recurrence = z
  .string()
  .trim()
  .max(300)
  .superRefine((text, context) => {
    try {
      parseRecurrence(text);
    } catch (error) {
      if (!(error instanceof DomainError)) throw error;
      context.addIssue({ code: 'custom', message: error.message });
    }
  });

function isWallTime(text: string): boolean {
  const [date, time, ...rest] = text.split('T');
  return rest.length === 0 && plannedDate.safeParse(date).success && localTime.safeParse(time).success;
}

const recurringStart = {
  /** No start before this date; also the week or month from which "every second" counts. */
  startOn: plannedDate,
  startsLocal: localTime,
  rrule: recurrence,
  /** Starts that don't take place, such as `2027-01-04T09:00`. */
  exceptLocal: z.array(z.string().refine(isWallTime, 'a start such as 2027-01-04T09:00')).max(400).default([]),
};

/** Hours of one stretch that recur by the wall clock; a subject is open when any of its stretches says so. */
export const recurringHours = z.strictObject({ ...recurringStart, minutes: z.int().min(5).max(1440) });
export type RecurringHours = z.output<typeof recurringHours>;

/** Departures of a courier; how long it is under way is the courier's. */
export const recurringDeparture = z.strictObject(recurringStart);
export type RecurringDeparture = z.output<typeof recurringDeparture>;
