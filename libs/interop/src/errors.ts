import { DomainError } from '@archwright/kernel';

/** A calendar cannot be written from these values; the message names the field and what would be accepted. */
export class CalendarFieldError extends DomainError {
  constructor(field: string, problem: string, accepted: string) {
    super('interop.calendar-field', `${field} ${problem}. Accepted: ${accepted}.`, { field, accepted });
  }
}

/** A calendar file as a whole is refused, so that nothing of it is loaded. */
export class CalendarFileError extends DomainError {
  constructor(reason: 'too-large' | 'not-a-calendar' | 'cut-off' | 'too-many-times' | 'zone', message: string) {
    super(`interop.calendar-${reason}`, message);
  }
}

/** A patient file as a whole is refused, so that nothing of it is loaded. */
export class PatientFileError extends DomainError {
  constructor(
    reason: 'too-large' | 'empty' | 'header' | 'mapping' | 'quotes' | 'encoding',
    message: string,
    details: Readonly<Record<string, unknown>> = {},
  ) {
    super(`interop.patients-${reason}`, message, details);
  }
}
