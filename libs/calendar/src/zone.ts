import { Temporal } from 'temporal-polyfill';
import { CalendarTextError } from './errors.js';
import { DAY_MS, dayNumber, wallMs, wallText } from './local-date.js';

interface Transition {
  readonly atMs: number;
  readonly offsetMs: number;
}

/**
 * Offsets of one zone, read from the engine's time zone data once per stretch and kept, because asking the engine for
 * each instant costs some ten microseconds. What is kept is a pure function of zone and stretch.
 */
interface ZoneOffsets {
  readonly name: string;
  readonly stretches: Map<number, readonly Transition[]>;
}

const STRETCH_MS = 400 * DAY_MS;
const known = new Map<string, ZoneOffsets>();

function offsetsOf(zone: string): ZoneOffsets {
  let offsets = known.get(zone);
  if (!offsets) {
    offsets = { name: readZoneName(zone), stretches: new Map() };
    known.set(zone, offsets);
  }
  return offsets;
}

function readZoneName(zone: string): string {
  // Fixed offsets such as "+02:00" are zones to Temporal, but a clinic has a place, and a place changes its offset.
  if (/^[A-Za-z]/.test(zone)) {
    try {
      return Temporal.Instant.fromEpochMilliseconds(0).toZonedDateTimeISO(zone).timeZoneId;
    } catch (refusal) {
      if (!(refusal instanceof RangeError)) throw refusal;
    }
  }
  throw new CalendarTextError(
    'a time zone',
    zone,
    'a name of the IANA time zone database, such as Europe/Berlin, or UTC',
  );
}

/**
 * @returns the zone's name as the engine writes it
 * @throws {CalendarTextError} when it is not a name of the IANA time zone database
 */
export function requireZone(zone: string): string {
  return offsetsOf(zone).name;
}

function stretchOf(offsets: ZoneOffsets, index: number): readonly Transition[] {
  let stretch = offsets.stretches.get(index);
  if (!stretch) {
    const endMs = (index + 1) * STRETCH_MS;
    let at: Temporal.ZonedDateTime | null = Temporal.Instant.fromEpochMilliseconds(
      index * STRETCH_MS,
    ).toZonedDateTimeISO(offsets.name);
    const found: Transition[] = [];
    while (at && at.epochMilliseconds < endMs) {
      found.push({ atMs: at.epochMilliseconds, offsetMs: at.offsetNanoseconds / 1e6 });
      at = at.getTimeZoneTransition('next');
    }
    stretch = found;
    offsets.stretches.set(index, stretch);
  }
  return stretch;
}

/** The transition in force at `ms`; its `atMs` is at the latest `ms`. */
function inForceAt(offsets: ZoneOffsets, ms: number): Transition {
  const stretch = stretchOf(offsets, Math.floor(ms / STRETCH_MS));
  for (let index = stretch.length - 1; index >= 0; index--) {
    const transition = stretch[index];
    if (transition && transition.atMs <= ms) return transition;
  }
  throw new RangeError(`No offset of ${offsets.name} at ${String(ms)}`);
}

/** How a wall time meets the clock of a zone. */
export interface Placed {
  /** The instant meant: the first of two, or by the offset before the gap (RFC 5545, section 3.3.5). */
  readonly ms: number;
  /** Start of the new offset when the wall time falls into a gap; null when the wall time occurs. */
  readonly gapEndMs: number | null;
}

/** Places wall milliseconds (see `wallMs`) in a zone. */
export function place(wall: number, zone: string): Placed {
  const offsets = offsetsOf(zone);
  // Offsets stay within a day of UTC, so a day to either side is safely before and after.
  const before = inForceAt(offsets, wall - DAY_MS).offsetMs;
  const after = inForceAt(offsets, wall + DAY_MS);
  const early = wall - before;
  if (before === after.offsetMs || inForceAt(offsets, early).offsetMs === before) return { ms: early, gapEndMs: null };
  const late = wall - after.offsetMs;
  if (inForceAt(offsets, late).offsetMs === after.offsetMs) return { ms: late, gapEndMs: null };
  return { ms: early, gapEndMs: inForceAt(offsets, early).atMs };
}

/** Wall milliseconds that the clock of a zone shows at an instant. */
export function wallAt(ms: number, zone: string): number {
  return ms + inForceAt(offsetsOf(zone), ms).offsetMs;
}

/**
 * The instant of a stated local time. In a gap the offset before the gap counts; of two the first (RFC 5545, 3.3.5).
 *
 * @param local 'YYYY-MM-DDTHH:mm'
 * @throws {CalendarTextError} when time or zone is not understood
 */
export function toInstantMs(local: string, zone: string): number {
  return place(wallMs(local), zone).ms;
}

/** Local time 'YYYY-MM-DDTHH:mm' in a zone at an instant; seconds are cut. */
export function toLocal(ms: number, zone: string): string {
  return wallText(wallAt(ms, zone));
}

/** Local date 'YYYY-MM-DD' in a zone at an instant. */
export function localDate(ms: number, zone: string): string {
  return toLocal(ms, zone).slice(0, 10);
}

/** The first instant of a local date: midnight, or the end of the gap that swallows midnight. */
export function startOfDayMs(date: string, zone: string): number {
  const placed = place(dayNumber(date) * DAY_MS, zone);
  return placed.gapEndMs ?? placed.ms;
}
