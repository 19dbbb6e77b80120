import type { RecurringDeparture, RecurringHours } from '@archwright/contracts';
import { CalendarRule, uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';

/** Whose hours they are, by the columns that name it. */
export type HoursSubject = Partial<
  Pick<
    CalendarRule,
    'clinicId' | 'practitionerId' | 'atClinicId' | 'laboratoryId' | 'workCentreId' | 'courierId' | 'direction'
  >
>;

/** Every recurring time of the organisation, as screens show it. */
export class KeptHours {
  private constructor(private readonly rows: readonly CalendarRule[]) {}

  static async load(tx: EntityManager): Promise<KeptHours> {
    return new KeptHours(await tx.find(CalendarRule, { order: { startsLocal: 'ASC', id: 'ASC' } }));
  }

  hours(subject: HoursSubject): RecurringHours[] {
    return this.of(subject).map((row) => ({ ...startOf(row), minutes: row.minutes }));
  }

  departures(subject: HoursSubject): RecurringDeparture[] {
    return this.of(subject).map(startOf);
  }

  private of(subject: HoursSubject): CalendarRule[] {
    const columns = Object.entries(subject) as [keyof HoursSubject, string][];
    return this.rows.filter((row) => columns.every(([column, value]) => row[column] === value));
  }
}

function startOf({ startOn, startsLocal, rrule, exceptLocal }: CalendarRule): RecurringDeparture {
  return { startOn, startsLocal, rrule, exceptLocal };
}

/** What is sent is all there is: times that are not in it end. */
export async function replaceHours(
  tx: EntityManager,
  subject: HoursSubject,
  times: readonly (RecurringDeparture & { readonly minutes?: number })[],
): Promise<void> {
  await tx.delete(CalendarRule, subject);
  for (const { minutes = 0, ...time } of times) {
    await tx.insert(CalendarRule, { ...subject, ...time, minutes, id: uuidv7() });
  }
}
