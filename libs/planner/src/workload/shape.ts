import { ChainCache } from '../chain/cache.js';
import type { OperationSegment } from '../chain/model.js';
import { openAxis, walkSegments } from '../chain/operation.js';
import type { WorkloadCentre } from './model.js';

/** A segment that keeps the place, by the start of its operation. */
export interface HeldSegment {
  readonly first: Int32Array;
  readonly end: Int32Array;
  /** True: only the open slots between `first` and `end` are kept. */
  readonly pauses: boolean;
}

/** What the hours of a centre make of equal operations, by start slot; looked up, never walked, in a search. */
export interface Shape {
  /** End by start; `slotCount + 1` where it does not fit. Never decreases over open starts. */
  readonly end: Int32Array;
  readonly held: readonly HeldSegment[];
  /** Slots of work, however the hours lie: the end is never earlier than this after the start. */
  readonly leastSlots: number;
  /** Slots for which a place is kept. */
  readonly heldSlots: number;
  /** The place is kept from beginning to end without a pause, so that a run can be shared. */
  readonly isWhole: boolean;
}

export function shapeOf(centre: WorkloadCentre, segments: readonly OperationSegment[], slotCount: number): Shape {
  const axis = openAxis(centre.open, slotCount, new ChainCache());
  const end = new Int32Array(slotCount + 1).fill(slotCount + 1);
  const tables = segments.map(({ holdsPlace, mode }) =>
    holdsPlace
      ? { first: new Int32Array(slotCount + 1), end: new Int32Array(slotCount + 1), pauses: mode === 'pauses' }
      : null,
  );
  for (const start of axis.slot) {
    let at = start;
    const fits = walkSegments({ segments }, axis, slotCount, start, (index, first, segmentEnd) => {
      at = segmentEnd;
      const table = tables[index];
      if (table == null) return;
      table.first[start] = first;
      table.end[start] = segmentEnd;
    });
    if (fits) end[start] = at;
  }
  const slots = (of: readonly OperationSegment[]) => of.reduce((sum, segment) => sum + segment.slots, 0);
  return {
    end,
    held: tables.filter((table) => table !== null),
    leastSlots: slots(segments),
    heldSlots: slots(segments.filter(({ holdsPlace }) => holdsPlace)),
    isWhole: segments.every(({ holdsPlace, mode }) => holdsPlace && mode === 'runs-on'),
  };
}
