import { and, clearInto, emptyBits, fullBits, hasBit, nextBit, orInto, setBit, slotsOf } from './bits.js';
import type { ChainCache } from './cache.js';
import type { ChainOperation, OperationSegment, SlotBits } from './model.js';

export interface Hold {
  readonly startSlot: number;
  readonly endSlot: number;
}

/** Where an operation may start, by place, and what its calendar makes of each start. */
export interface OperationStarts {
  /**
   * Starts free on each place, batches and what is allowed besides left aside; one entry "no place" when the operation
   * holds none.
   */
  readonly byPlace: readonly { readonly place: string | null; readonly starts: SlotBits }[];
  /** Allowed starts free on some place. */
  readonly any: SlotBits;
  /** End slot by start slot, `slotCount + 1` when it does not fit; never decreases. */
  readonly end: Int32Array;
  /** First held slot by start slot, and the end of the last hold. Equal to each other when nothing is held. */
  readonly firstHold: Int32Array;
  readonly lastHoldEnd: Int32Array;
}

/** The open slots of a centre, to count through closed hours. */
export interface OpenAxis {
  /** Open slots before each slot; `slotCount + 1` entries. */
  readonly rank: Int32Array;
  /** Slot of each rank. */
  readonly slot: Int32Array;
}

export function openAxis(open: SlotBits, slotCount: number, cache: ChainCache): OpenAxis {
  return cache.get(`open-axis:${cache.id(open)}:${slotCount}`, () => {
    const slot = slotsOf(open);
    const rank = new Int32Array(slotCount + 1);
    for (let index = 0; index < slot.length; index++) {
      rank.fill(index + 1, slot[index]! + 1, (slot[index + 1] ?? slotCount) + 1);
    }
    return { rank, slot };
  });
}

/** Calls `visit` per segment with the range it works in; false when it runs past the axis. */
export function walkSegments(
  { segments }: Pick<ChainOperation, 'segments'>,
  axis: OpenAxis,
  slotCount: number,
  start: number,
  visit: (segment: number, first: number, end: number) => void,
): boolean {
  let at = start;
  for (let index = 0; index < segments.length; index++) {
    const segment = segments[index]!;
    let first = at;
    let end = at + segment.slots;
    if (segment.mode === 'pauses') {
      const rank = at > slotCount ? axis.slot.length : axis.rank[at]!;
      if (rank + segment.slots > axis.slot.length) return false;
      first = axis.slot[rank]!;
      end = axis.slot[rank + segment.slots - 1]! + 1;
    }
    if (end > slotCount) return false;
    visit(index, first, end);
    at = end;
  }
  return true;
}

/** Ranges in which an operation that starts at `start` holds its place. */
export function holdsOf(
  operation: Pick<ChainOperation, 'centreOpen' | 'segments'>,
  slotCount: number,
  start: number,
  cache: ChainCache,
): Hold[] {
  const axis = openAxis(operation.centreOpen, slotCount, cache);
  const holds: Hold[] = [];
  walkSegments(operation, axis, slotCount, start, (index, first, end) => {
    const segment = operation.segments[index]!;
    if (!segment.holdsPlace) return;
    let runStart = first;
    for (let slot = first; slot < end; slot++) {
      const works = segment.mode === 'runs-on' || hasBit(operation.centreOpen, slot);
      if (!works) {
        if (runStart < slot) holds.push({ startSlot: runStart, endSlot: slot });
        runStart = slot + 1;
      }
    }
    if (runStart < end) holds.push({ startSlot: runStart, endSlot: end });
  });
  return holds;
}

/** Taken slots before each slot, over all slots or over open slots only: a range is free when the two ends agree. */
function takenBefore(free: SlotBits, slotCount: number, open: SlotBits | null, cache: ChainCache): Int32Array {
  return cache.get(`taken:${cache.id(free)}:${cache.id(open)}:${slotCount}`, () => {
    const taken = open === null ? fullBits(slotCount) : open.slice();
    clearInto(taken, free);
    const before = new Int32Array(slotCount + 1);
    let count = 0;
    let from = 0;
    for (let slot = nextBit(taken, 0); slot >= 0; slot = nextBit(taken, slot + 1)) {
      before.fill(count++, from, slot + 1);
      from = slot + 1;
    }
    return before.fill(count, from);
  });
}

/** Number of an operation by what the search reads of it: every case brings objects of its own for the same work. */
export function operationId(operation: ChainOperation, cache: ChainCache): number {
  return cache.idOfContent(operation, () => {
    const { centreOpen, segments, places, batches, allowed } = operation;
    return [
      'operation',
      cache.id(centreOpen),
      segments.map(({ slots, mode, holdsPlace }) => `${String(slots)} ${mode} ${String(holdsPlace)}`).join(),
      places.map(({ key, free }) => `${key} ${String(cache.id(free))}`).join(),
      batches.map((batch) => `${batch.key} ${batch.place} ${String(batch.startSlot)} ${String(batch.endSlot)}`).join(),
      cache.id(allowed),
    ].join(';');
  });
}

/** What a centre's hours make of an operation, whatever is free. */
interface OperationTimes {
  readonly end: Int32Array;
  readonly firstHold: Int32Array;
  readonly lastHoldEnd: Int32Array;
  /** Rising starts from which it ends in time. */
  readonly fitting: Int32Array;
  /** By segment that holds a place: its range by index in `fitting`. */
  readonly held: readonly {
    readonly mode: OperationSegment['mode'];
    readonly first: Int32Array;
    readonly end: Int32Array;
  }[];
}

/** Start sets and calendar tables of one operation, batches apart. */
export function operationStarts(operation: ChainOperation, slotCount: number, cache: ChainCache): OperationStarts {
  const key = `starts:${String(operationId(operation, cache))}:${String(slotCount)}`;
  return cache.get(key, () => startsFrom(operation, slotCount, cache));
}

/** Hours change seldom and bookings often: only what hangs on the place that was booked is made again. */
function startsFrom(operation: ChainOperation, slotCount: number, cache: ChainCache): OperationStarts {
  const { centreOpen, segments, allowed } = operation;
  const hours = `${String(cache.id(centreOpen))}:${segments.map(({ slots, mode, holdsPlace }) => `${String(slots)} ${mode} ${String(holdsPlace)}`).join()}:${String(slotCount)}`;
  const times = cache.get(`times:${hours}`, () => timesFrom(operation, slotCount, cache));
  const on = (free: SlotBits | null): SlotBits =>
    cache.get(`on-place:${String(cache.id(free))}:${hours}`, () => startsOn(free, times, centreOpen, slotCount, cache));
  const places = times.held.length > 0 ? operation.places : [];
  const byPlace =
    places.length === 0
      ? [{ place: null, starts: on(null) }]
      : places.map(({ key, free }) => ({ place: key, starts: on(free) }));
  const sets = byPlace.map(({ starts }) => starts);
  const onAny = cache.get(`on-any:${sets.map((starts) => cache.id(starts)).join()}`, () => {
    const any = emptyBits(slotCount);
    for (const starts of sets) orInto(any, starts);
    return any;
  });
  const any = allowed === null ? onAny : and(onAny, allowed);
  const { end, firstHold, lastHoldEnd } = times;
  return { byPlace, any, end, firstHold, lastHoldEnd };
}

function timesFrom({ centreOpen, segments }: ChainOperation, slotCount: number, cache: ChainCache): OperationTimes {
  const { slot, rank } = openAxis(centreOpen, slotCount, cache);
  // By segment: where it begins and ends for each start. Who starts later never ends earlier, so the starts that fit lead.
  let at = slot;
  let fitting = slot.length;
  const ranges = segments.map(({ slots, mode }) => {
    const first = new Int32Array(fitting);
    const end = new Int32Array(fitting);
    let fits = 0;
    for (; fits < fitting; fits++) {
      const begin = at[fits]!;
      const open = mode === 'pauses' ? rank[begin]! : 0;
      if (mode === 'pauses' && open + slots > slot.length) break;
      first[fits] = mode === 'pauses' ? slot[open]! : begin;
      end[fits] = mode === 'pauses' ? slot[open + slots - 1]! + 1 : begin + slots;
      if (end[fits]! > slotCount) break;
    }
    fitting = fits;
    at = end;
    return { mode, first, end };
  });
  const held = ranges.filter((_, index) => segments[index]!.holdsPlace);
  const never = slotCount + 1;
  const [ends, firsts, lasts] = [at, held[0]?.first ?? slot, held.at(-1)?.end ?? slot];
  const end = new Int32Array(slotCount).fill(never);
  const firstHold = new Int32Array(slotCount).fill(never);
  const lastHoldEnd = new Int32Array(slotCount).fill(never);
  // Closed starts take the values of the next open one, so that the tables never decrease.
  for (let index = 0, from = 0; index < fitting; index++) {
    const until = slot[index]! + 1;
    end.fill(ends[index]!, from, until);
    firstHold.fill(firsts[index]!, from, until);
    lastHoldEnd.fill(lasts[index]!, from, until);
    from = until;
  }
  return { end, firstHold, lastHoldEnd, fitting: slot.subarray(0, fitting), held };
}

/** Starts for which a place is free while it is held; `null`: no place is. */
function startsOn(
  free: SlotBits | null,
  { fitting, held }: OperationTimes,
  centreOpen: SlotBits,
  slotCount: number,
  cache: ChainCache,
): SlotBits {
  const starts = emptyBits(slotCount);
  const isFree = new Uint8Array(fitting.length).fill(1);
  for (const { mode, first, end } of free === null ? [] : held) {
    const taken = takenBefore(free!, slotCount, mode === 'pauses' ? centreOpen : null, cache);
    for (let at = 0; at < fitting.length; at++) if (taken[end[at]!] !== taken[first[at]!]) isFree[at] = 0;
  }
  for (let at = 0; at < fitting.length; at++) if (isFree[at] === 1) setBit(starts, fitting[at]!);
  return starts;
}
