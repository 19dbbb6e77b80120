import { CalendarNumberError, requireWhole } from './errors.js';
import type { Interval } from './intervals.js';
import { DAY_MS, MINUTE_MS, dateOfDay } from './local-date.js';
import { startOfDayMs, wallAt } from './zone.js';

/** Equal slots on one absolute time axis: slot i is `[originMs + i * slotMinutes, + slotMinutes)`. */
export interface SlotAxis {
  readonly originMs: number;
  /** Bookings sit on a 5-minute grid; other lengths serve small test models. */
  readonly slotMinutes: number;
  readonly count: number;
}

/** Slot length in milliseconds of an axis whose numbers make sense. */
function slotMsOf(axis: SlotAxis): number {
  requireWhole('The length of a slot in minutes', axis.slotMinutes, 1);
  requireWhole('The number of slots', axis.count, 0);
  if (!Number.isSafeInteger(axis.originMs)) {
    throw new CalendarNumberError('The origin of the slots', axis.originMs, 'epoch milliseconds, a whole number');
  }
  return axis.slotMinutes * MINUTE_MS;
}

/**
 * Free time as bits: slot i is bit `i & 31` (least significant first) of word `i >>> 5`. A slot is set only when it
 * lies wholly inside the free time; what lies outside the axis is left out.
 *
 * @param free a normalised list
 */
export function toBits(free: readonly Interval[], axis: SlotAxis): Uint32Array {
  const slotMs = slotMsOf(axis);
  return filled(
    free,
    axis,
    (fromMs) => Math.ceil(fromMs / slotMs),
    (toMs) => Math.floor(toMs / slotMs),
  );
}

/** Busy time as bits in the layout of `toBits`: a slot is set when busy time touches any part of it. */
export function busyToBits(busy: readonly Interval[], axis: SlotAxis): Uint32Array {
  const slotMs = slotMsOf(axis);
  return filled(
    busy,
    axis,
    (fromMs) => Math.floor(fromMs / slotMs),
    (toMs) => Math.ceil(toMs / slotMs),
  );
}

function filled(
  intervals: readonly Interval[],
  axis: SlotAxis,
  firstSlot: (sinceOriginMs: number) => number,
  endSlot: (sinceOriginMs: number) => number,
): Uint32Array {
  const bits = new Uint32Array((axis.count + 31) >>> 5);
  for (const { startMs, endMs } of intervals) {
    const first = Math.max(0, firstSlot(startMs - axis.originMs));
    const end = Math.min(axis.count, endSlot(endMs - axis.originMs));
    if (startMs < endMs && first < end) setRange(bits, first, end);
  }
  return bits;
}

/** Sets the bits `[first, end)`; `first < end`. */
function setRange(bits: Uint32Array, first: number, end: number): void {
  const firstWord = first >>> 5;
  const lastWord = (end - 1) >>> 5;
  const head = (-1 << (first & 31)) >>> 0;
  const tail = -1 >>> (31 - ((end - 1) & 31));
  if (firstWord === lastWord) {
    bits[firstWord] = (bits[firstWord] ?? 0) | (head & tail);
    return;
  }
  bits[firstWord] = (bits[firstWord] ?? 0) | head;
  bits.fill(0xffff_ffff, firstWord + 1, lastWord);
  bits[lastWord] = (bits[lastWord] ?? 0) | tail;
}

/**
 * The local day in which each slot starts, as days since 1970-01-01 (`dateOfDay` reads it back). Comparable between
 * zones and never decreasing: a day runs to the first instant of the next, even where a clock is set back over midnight.
 */
export function dayOfSlot(axis: SlotAxis, zone: string): Int32Array {
  const slotMs = slotMsOf(axis);
  const days = new Int32Array(axis.count);
  let day = Math.floor(wallAt(axis.originMs, zone) / DAY_MS);
  let nextDayMs = startOfDayMs(dateOfDay(day + 1), zone);
  for (let slot = 0; slot < axis.count; slot++) {
    while (axis.originMs + slot * slotMs >= nextDayMs) {
      day++;
      nextDayMs = startOfDayMs(dateOfDay(day + 1), zone);
    }
    days[slot] = day;
  }
  return days;
}
