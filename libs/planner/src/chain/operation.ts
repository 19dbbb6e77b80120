import { emptyBits, hasBit, orInto, setBit } from './bits.js';
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
interface OpenAxis {
  /** Open slots before each slot; `slotCount + 1` entries. */
  readonly rank: Int32Array;
  /** Slot of each rank. */
  readonly slot: Int32Array;
}

function openAxis(open: SlotBits, slotCount: number): OpenAxis {
  const rank = new Int32Array(slotCount + 1);
  const slots: number[] = [];
  for (let slot = 0; slot < slotCount; slot++) {
    rank[slot] = slots.length;
    if (hasBit(open, slot)) slots.push(slot);
  }
  rank[slotCount] = slots.length;
  return { rank, slot: Int32Array.from(slots) };
}

/** Calls `visit` per segment with the range it works in; false when it runs past the axis. */
function walkSegments(
  operation: ChainOperation,
  axis: OpenAxis,
  slotCount: number,
  start: number,
  visit: (segment: number, first: number, end: number) => void,
): boolean {
  let at = start;
  for (let index = 0; index < operation.segments.length; index++) {
    const segment = operation.segments[index]!;
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
export function holdsOf(operation: ChainOperation, slotCount: number, start: number): Hold[] {
  const axis = openAxis(operation.centreOpen, slotCount);
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

/** Taken slots before each slot, over all slots and over open slots only: a range is free when the two ends agree. */
function takenBefore(free: SlotBits, slotCount: number, open: SlotBits | null): Int32Array {
  const taken = new Int32Array(slotCount + 1);
  for (let slot = 0; slot < slotCount; slot++) {
    const counts = !hasBit(free, slot) && (open === null || hasBit(open, slot));
    taken[slot + 1] = taken[slot]! + (counts ? 1 : 0);
  }
  return taken;
}

/** Start sets and calendar tables of one operation, batches apart. */
export function operationStarts(operation: ChainOperation, slotCount: number): OperationStarts {
  const axis = openAxis(operation.centreOpen, slotCount);
  const end = new Int32Array(slotCount).fill(slotCount + 1);
  const firstHold = new Int32Array(slotCount).fill(slotCount + 1);
  const lastHoldEnd = new Int32Array(slotCount).fill(slotCount + 1);
  const holding = operation.segments.some((segment) => segment.holdsPlace);
  const places = holding ? operation.places : [{ key: null, free: null }];
  const taken = places.map(({ free }) =>
    free === null
      ? null
      : {
          all: takenBefore(free, slotCount, null),
          open: takenBefore(free, slotCount, operation.centreOpen),
        },
  );
  const byPlace = places.map(({ key }) => ({ place: key, starts: emptyBits(slotCount) }));
  const free = new Uint8Array(places.length);
  let ends = slotCount + 1;
  let firsts = slotCount + 1;
  let lasts = slotCount + 1;
  for (let start = slotCount - 1; start >= 0; start--) {
    const opens = hasBit(operation.centreOpen, start);
    if (opens) {
      free.fill(1);
      let first = -1;
      let last = start;
      let at = start;
      const fits = walkSegments(operation, axis, slotCount, start, (index, segmentStart, segmentEnd) => {
        at = segmentEnd;
        const segment = operation.segments[index]!;
        if (!segment.holdsPlace) return;
        if (first < 0) first = segmentStart;
        last = segmentEnd;
        for (let place = 0; place < taken.length; place++) {
          const counts = segment.mode === 'pauses' ? taken[place]?.open : taken[place]?.all;
          if (counts !== undefined && counts[segmentEnd] !== counts[segmentStart]) free[place] = 0;
        }
      });
      if (fits) {
        ends = at;
        firsts = first < 0 ? start : first;
        lasts = first < 0 ? start : last;
        if (operation.allowed === null || hasBit(operation.allowed, start)) {
          for (let place = 0; place < byPlace.length; place++) {
            if (free[place] === 1) setBit(byPlace[place]!.starts, start);
          }
        }
      }
    }
    // A closed start takes the next open one's values, so that the tables never decrease.
    end[start] = ends;
    firstHold[start] = firsts;
    lastHoldEnd[start] = lasts;
  }
  const any = emptyBits(slotCount);
  for (const { starts } of byPlace) orInto(any, starts);
  return { byPlace, any, end, firstHold, lastHoldEnd };
}
