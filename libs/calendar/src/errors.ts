import { DomainError } from '@archwright/kernel';

/** A date, wall time, zone or duration that is not written as asked for. */
export class CalendarTextError extends DomainError {
  constructor(what: string, value: string, accepted: string) {
    super('calendar.text-not-understood', `"${value}" is not ${what}. Accepted: ${accepted}.`, {
      what,
      value,
      accepted,
    });
  }
}

/** A recurrence rule that is malformed, or that opening hours have no use for. */
export class RecurrenceRuleError extends DomainError {
  constructor(rule: string, reason: string, accepted: string) {
    super('calendar.bad-recurrence-rule', `Recurrence rule "${rule}": ${reason}. Accepted: ${accepted}.`, {
      rule,
      reason,
      accepted,
    });
  }
}

/** A number that a calendar function can't work with. */
export class CalendarNumberError extends DomainError {
  constructor(what: string, value: number, accepted: string) {
    super('calendar.number-out-of-range', `${what} is ${String(value)}. Accepted: ${accepted}.`, {
      what,
      value,
      accepted,
    });
  }
}

/** The laboratory has no working day within reach, because it is never open or closed for too long. */
export class NoLabWorkingDayError extends DomainError {
  constructor(fromOn: string, searchedDays: number) {
    super(
      'calendar.no-lab-working-day',
      `The laboratory has no working day in the ${String(searchedDays)} days from ${fromOn}. ` +
        'Name at least one open weekday, or shorten the closure.',
      { fromOn, searchedDays },
    );
  }
}

/** A whole number from `least` on, or a refusal that names it. */
export function requireWhole(what: string, value: number, least: number): number {
  if (!Number.isSafeInteger(value) || value < least) {
    throw new CalendarNumberError(what, value, `a whole number of ${String(least)} or more`);
  }
  return value;
}
