import { addDays, localDate } from '@archwright/calendar';
import { CalendarRule, uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Hours } from '../demo/scenario.js';

/** Hours reach back, so that work which is under way when the demonstration begins has had its days and couriers. */
const BEGUN_DAYS_AGO = 60;

/** Whose hours they are, as the columns of a calendar rule name it. */
type Subject = Partial<
  Pick<
    CalendarRule,
    'clinicId' | 'practitionerId' | 'atClinicId' | 'laboratoryId' | 'courierId' | 'direction' | 'protectedTimeId'
  >
>;

/** Writes recurring hours of the demonstration practice. */
export class HoursWriter {
  private readonly startOn: string;

  constructor(
    private readonly tx: EntityManager,
    zone: string,
    now: Date,
  ) {
    this.startOn = addDays(localDate(now.getTime(), zone), -BEGUN_DAYS_AGO);
  }

  async write(subject: Subject, hours: readonly Hours[]): Promise<void> {
    for (const { rule, from, to } of hours) await this.add(subject, rule, from, minutesOf(to) - minutesOf(from));
  }

  async add(subject: Subject, rrule: string, startsLocal: string, minutes: number): Promise<void> {
    const { startOn } = this;
    await this.tx.insert(CalendarRule, {
      ...subject,
      id: uuidv7(),
      startOn,
      startsLocal,
      minutes,
      rrule,
      exceptLocal: [],
    });
  }
}

function minutesOf(time: string): number {
  const [hours = 0, minutes = 0] = time.split(':').map(Number);
  return hours * 60 + minutes;
}
