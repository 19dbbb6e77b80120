import { requireWhole } from './errors.js';
import { firstEndingAfter, type Interval } from './intervals.js';
import { MINUTE_MS } from './local-date.js';

/**
 * When work that pauses over closed time is finished.
 *
 * @param open normalised open time
 * @param fromMs the work may begin from here on; it begins in the first open time
 * @param minutes whole minutes of work, 0 or more; 0 is finished at the first open instant from `fromMs` on
 * @returns the instant at which the last minute ends (the end of an open range included), or undefined when the open
 * time given ends before
 * @throws {CalendarNumberError} when `minutes` is not a whole number of 0 or more
 */
export function addWorkingMinutes(open: readonly Interval[], fromMs: number, minutes: number): number | undefined {
  let leftMs = requireWhole('The minutes of work', minutes, 0) * MINUTE_MS;
  for (let index = firstEndingAfter(open, fromMs); index < open.length; index++) {
    const range = open[index];
    if (!range) break;
    const startMs = Math.max(range.startMs, fromMs);
    if (leftMs <= range.endMs - startMs) return startMs + leftMs;
    leftMs -= range.endMs - startMs;
  }
  return undefined;
}
