import type { LocalRule } from '@archwright/calendar';

/** Days and hours, each week, of whoever brings the patient. */
interface Escort {
  /** ISO weekdays, Monday 1. */
  readonly weekdays: readonly number[];
  /** Wall times such as 09:00, the second after the first. */
  readonly from: string;
  readonly to: string;
}

/** Of RFC 5545, Monday first. */
const DAY_CODES = ['MO', 'TU', 'WE', 'TH', 'FR', 'SA', 'SU'];

const minuteOf = (time: string): number => Number(time.slice(0, 2)) * 60 + Number(time.slice(3, 5));

/**
 * Opening times out of when somebody can bring the patient.
 *
 * @param firstOn date from which they count, in the patient's zone
 * @returns one rule; none where nobody has to
 */
export function escortTimes(escort: Escort | null | undefined, zone: string, firstOn: string): readonly LocalRule[] {
  if (escort == null) return [];
  const days = [...escort.weekdays].sort((a, b) => a - b).map((day) => DAY_CODES[day - 1] ?? '');
  return [
    {
      zone,
      startsLocal: `${firstOn}T${escort.from.slice(0, 5)}`,
      minutes: minuteOf(escort.to) - minuteOf(escort.from),
      rrule: `FREQ=WEEKLY;BYDAY=${days.join(',')}`,
    },
  ];
}
