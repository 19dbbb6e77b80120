import { requireWhole } from './errors.js';
import type { Interval } from './intervals.js';
import { MINUTE_MS } from './local-date.js';
import { startsOf, type LocalRule } from './rule.js';

/** One run of a courier from one place to another. */
export interface CourierRun {
  readonly departsAtMs: number;
  readonly arrivesAtMs: number;
}

/**
 * The runs of a timetable that depart in a window, by departure.
 *
 * @param rule departures; its `minutes` is how long the parcel is under way, in exact time
 */
export function courierRuns(rule: LocalRule, window: Interval): CourierRun[] {
  const transitMs = requireWhole('The transit minutes of a courier', rule.minutes, 0) * MINUTE_MS;
  return startsOf(rule, window).map((departsAtMs) => ({ departsAtMs, arrivesAtMs: departsAtMs + transitMs }));
}

/**
 * The first departure at or after `atMs`.
 *
 * @param departures epoch milliseconds, ascending
 * @returns undefined when the last one has left
 */
export function nextPickUp(departures: readonly number[], atMs: number): number | undefined {
  let low = 0;
  let high = departures.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((departures[middle] ?? Infinity) < atMs) low = middle + 1;
    else high = middle;
  }
  return departures[low];
}

/**
 * When a parcel that is ready at `readyAtMs` can arrive at the earliest. A later run may overtake an earlier one, so
 * all runs that depart at or after `readyAtMs` count, and their order does not matter.
 *
 * @returns undefined when no run is left
 */
export function earliestArrivalMs(runs: readonly CourierRun[], readyAtMs: number): number | undefined {
  let earliest: number | undefined;
  for (const { departsAtMs, arrivesAtMs } of runs) {
    if (departsAtMs >= readyAtMs && (earliest === undefined || arrivesAtMs < earliest)) earliest = arrivesAtMs;
  }
  return earliest;
}
