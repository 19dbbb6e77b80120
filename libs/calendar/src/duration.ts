import { CalendarTextError } from './errors.js';
import { DAY_MS } from './local-date.js';
import { place, wallAt } from './zone.js';

const DURATION = /^P(?!$)(?:(\d+)W|(?:(\d+)D)?(?:T(?=\d)(?:(\d+)H)?(?:(\d+)M)?(?:(\d+)S)?)?)$/;

/**
 * An instant minus a duration of RFC 5545, section 3.3.6: weeks and days are nominal (the same wall time on an earlier
 * date), hours, minutes and seconds exact. Days are taken off first, as section 3.8.5.3 asks when both are given. A
 * wall time that a clock change skips or repeats is read as in `toInstantMs`.
 *
 * @param ms the instant to count back from
 * @param zone the zone whose wall clock nominal days keep
 * @param duration such as P2D, PT48H, P1W or P1DT12H, without a sign
 * @throws {CalendarTextError} when the duration is not written so
 */
export function subtractDuration(ms: number, zone: string, duration: string): number {
  const parts = DURATION.exec(duration);
  if (!parts) {
    throw new CalendarTextError('a duration', duration, 'RFC 5545 without sign, such as P2D, PT48H, P1W, P1DT12H');
  }
  const [weeks, days, hours, minutes, seconds] = parts
    .slice(1)
    .map((digits: string | undefined) => Number(digits ?? 0));
  const nominalDays = (weeks ?? 0) * 7 + (days ?? 0);
  const exactMs = (((hours ?? 0) * 60 + (minutes ?? 0)) * 60 + (seconds ?? 0)) * 1000;
  // Zero days must leave the second of two equal wall times where it is.
  const onEarlierDateMs = nominalDays === 0 ? ms : place(wallAt(ms, zone) - nominalDays * DAY_MS, zone).ms;
  return onEarlierDateMs - exactMs;
}
