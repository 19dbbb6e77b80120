import { CalendarTextError } from './errors.js';
import { intersect, normalise, subtract, type Interval } from './intervals.js';
import { addDays, dayNumber } from './local-date.js';
import { expandRule, type LocalRule } from './rule.js';
import { startOfDayMs } from './zone.js';

/** Whole local days on which something is closed, the last one included. */
export interface ClosedDays {
  readonly zone: string;
  readonly firstOn: string;
  readonly lastOn: string;
}

/** What makes up the open time of a chair, a person or a bench. */
export interface Hours {
  /** Open when any rule says so. */
  readonly rules: readonly LocalRule[];
  /** Closures and absences, as local days or as exact time; any order. */
  readonly closures?: readonly (ClosedDays | Interval)[];
  /** Bookings and imported busy time; any order. */
  readonly busy?: readonly Interval[];
}

/** The exact time of closed local days: 23 or 25 hours for a day on which the clock changes. */
export function closedInterval({ zone, firstOn, lastOn }: ClosedDays): Interval {
  if (dayNumber(lastOn) < dayNumber(firstOn)) {
    throw new CalendarTextError('an end of a closure', lastOn, `a date from ${firstOn} on, the first closed day`);
  }
  return { startMs: startOfDayMs(firstOn, zone), endMs: startOfDayMs(addDays(lastOn, 1), zone) };
}

/**
 * Open and not taken: the rules' time within `window`, less closures and busy time.
 *
 * @returns a normalised list
 */
export function openIntervals({ rules, closures = [], busy = [] }: Hours, window: Interval): Interval[] {
  const open = normalise(rules.flatMap((rule) => expandRule(rule, window)));
  const closed = closures.map((closure) => ('zone' in closure ? closedInterval(closure) : closure));
  return intersect(subtract(open, normalise([...closed, ...busy])), normalise([window]));
}
