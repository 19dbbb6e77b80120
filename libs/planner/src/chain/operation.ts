import { and, clearInto, emptyBits, fullBits, hasBit, nextBit, orInto, setBit, slotsOf } from './bits.js';
import type { ChainCache } from './cache.js';
import type { ChainOperation, OperationSegment, SlotBits } from './model.js';

export interface Hold {
  readonly startSlot: number;
  readonly endSlot: number;
}

/** Where an operation may start, by place, and what its calendar makes of each start. */
export interface OperationStarts {
  /** Starts free on each place, batches left out; one entry "no place" when the operation holds none. */
  readonly byPlace: readonly { readonly place: string | null; readonly starts: SlotBits }[];
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
  const on = (free: SlotBits | null): SlotBits => {
    const starts = cache.get(`on-place:${String(cache.id(free))}:${hours}`, () =>
      startsOn(free, times, centreOpen, slotCount, cache),
    );
    return allowed === null ? starts : and(starts, allowed);
  };
  const places = times.held.length > 0 ? operation.places : [];
  const byPlace =
    places.length === 0
      ? [{ place: null, starts: on(null) }]
      : places.map(({ key, free }) => ({ place: key, starts: on(free) }));
  const any = emptyBits(slotCount);
  for (const { starts } of byPlace) orInto(any, starts);
  const { end, firstHold, lastHoldEnd } = times;
  return { byPlace, any, end, firstHold, lastHoldEnd };
}

function timesFrom(operation: ChainOperation, slotCount: number, cache: ChainCache): OperationTimes {
  const { segments } = operation;
  const axis = openAxis(operation.centreOpen, slotCount, cache);
  const end = new Int32Array(slotCount).fill(slotCount + 1);
  const firstHold = new Int32Array(slotCount).fill(slotCount + 1);
  const lastHoldEnd = new Int32Array(slotCount).fill(slotCount + 1);
  const firsts = segments.map(() => new Int32Array(axis.slot.length));
  const lasts = segments.map(() => new Int32Array(axis.slot.length));
  // Who starts later never ends earlier: the starts that fit lead.
  let fitting = axis.slot.length;
  for (let rank = axis.slot.length - 1; rank >= 0; rank--) {
    const start = axis.slot[rank]!;
    let first = -1;
    let last = start;
    let at = start;
    const fits = walkSegments(operation, axis, slotCount, start, (index, segmentStart, segmentEnd) => {
      at = segmentEnd;
      firsts[index]![rank] = segmentStart;
      lasts[index]![rank] = segmentEnd;
      if (!segments[index]!.holdsPlace) return;
      if (first < 0) first = segmentStart;
      last = segmentEnd;
    });
    // Closed starts before this one take its values, so that the tables never decrease.
    const from = rank === 0 ? 0 : axis.slot[rank - 1]! + 1;
    if (!fits) {
      fitting = rank;
      continue;
    }
    end.fill(at, from, start + 1);
    firstHold.fill(first < 0 ? start : first, from, start + 1);
    lastHoldEnd.fill(first < 0 ? start : last, from, start + 1);
  }
  return {
    end,
    firstHold,
    lastHoldEnd,
    fitting: axis.slot.subarray(0, fitting),
    held: segments.flatMap(({ mode, holdsPlace }, index) =>
      holdsPlace ? [{ mode, first: firsts[index]!, end: lasts[index]! }] : [],
    ),
  };
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
