import { clearInto, emptyBits, fullBits, hasBit, nextBit, orInto, setBit, slotsOf } from './bits.js';
import type { ChainCache } from './cache.js';
import type { ChainOperation, SlotBits } from './model.js';

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

/** Start sets and calendar tables of one operation, batches apart. */
export function operationStarts(operation: ChainOperation, slotCount: number, cache: ChainCache): OperationStarts {
  const key = `starts:${String(operationId(operation, cache))}:${String(slotCount)}`;
  return cache.get(key, () => startsFrom(operation, slotCount, cache));
}

function startsFrom(operation: ChainOperation, slotCount: number, cache: ChainCache): OperationStarts {
  const { centreOpen, segments, allowed } = operation;
  const axis = openAxis(centreOpen, slotCount, cache);
  const end = new Int32Array(slotCount).fill(slotCount + 1);
  const firstHold = new Int32Array(slotCount).fill(slotCount + 1);
  const lastHoldEnd = new Int32Array(slotCount).fill(slotCount + 1);
  const places = segments.some(({ holdsPlace }) => holdsPlace) ? operation.places : [];
  const byPlace =
    places.length === 0
      ? [{ place: null, starts: emptyBits(slotCount) }]
      : places.map(({ key }) => ({ place: key, starts: emptyBits(slotCount) }));
  // By segment and place; a segment that holds no place has none.
  const taken = segments.map(({ holdsPlace, mode }) =>
    holdsPlace
      ? places.map(({ free }) => takenBefore(free, slotCount, mode === 'pauses' ? centreOpen : null, cache))
      : [],
  );
  const isFree = new Uint8Array(byPlace.length);
  let ends = slotCount + 1;
  let firsts = slotCount + 1;
  let lasts = slotCount + 1;
  for (let rank = axis.slot.length - 1; rank >= 0; rank--) {
    const start = axis.slot[rank]!;
    isFree.fill(1);
    let first = -1;
    let last = start;
    let at = start;
    const fits = walkSegments(operation, axis, slotCount, start, (index, segmentStart, segmentEnd) => {
      at = segmentEnd;
      if (!segments[index]!.holdsPlace) return;
      if (first < 0) first = segmentStart;
      last = segmentEnd;
      const counts = taken[index]!;
      for (let place = 0; place < counts.length; place++) {
        if (counts[place]![segmentEnd] !== counts[place]![segmentStart]) isFree[place] = 0;
      }
    });
    if (fits) {
      ends = at;
      firsts = first < 0 ? start : first;
      lasts = first < 0 ? start : last;
      if (allowed === null || hasBit(allowed, start)) {
        for (let place = 0; place < byPlace.length; place++) {
          if (isFree[place] === 1) setBit(byPlace[place]!.starts, start);
        }
      }
    }
    // Closed starts before this one take its values, so that the tables never decrease.
    const from = rank === 0 ? 0 : axis.slot[rank - 1]! + 1;
    end.fill(ends, from, start + 1);
    firstHold.fill(firsts, from, start + 1);
    lastHoldEnd.fill(lasts, from, start + 1);
  }
  const any = emptyBits(slotCount);
  for (const { starts } of byPlace) orInto(any, starts);
  return { byPlace, any, end, firstHold, lastHoldEnd };
}
