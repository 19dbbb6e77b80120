import { Bench } from './bench.js';
import type { WorkloadLayout } from './layout.js';

/** When each operation could be, were nothing else to be done than what stays. */
export interface EarliestTimes {
  /** By operation; `slotCount + 1` when there is no room. */
  readonly start: Int32Array;
  readonly end: Int32Array;
}

/**
 * Every operation at its first fit between what stays, longest waits left aside. First fits never come earlier for
 * waiting, so no plan has any of them sooner.
 */
export function earliestTimes(layout: WorkloadLayout): EarliestTimes {
  const { operations, slotCount } = layout;
  const bench = new Bench(layout);
  const start = new Int32Array(operations.length).fill(slotCount + 1);
  const end = new Int32Array(operations.length).fill(slotCount + 1);
  for (const operation of operations) {
    let from = operation.first;
    for (const { from: before, atEnd, lo } of operation.before) {
      const anchor = atEnd ? end[before]! : start[before]!;
      if (anchor > slotCount) from = slotCount + 1;
      else if (lo !== null) from = Math.max(from, lo[anchor]!);
    }
    bench.fit(operation, from);
    if (bench.start < 0) continue;
    start[operation.id] = bench.start;
    end[operation.id] = bench.run >= 0 ? bench.runs[bench.run]!.end : operation.shape.end[bench.start]!;
  }
  return { start, end };
}

/** Slots that pass at least between the end of an operation and that of the last one of its job, hours left aside. */
export function leastTails({ operations }: WorkloadLayout): Int32Array {
  const tail = new Int32Array(operations.length);
  for (const { id, shape, before } of [...operations].reverse()) {
    for (const { from, atEnd, lo } of before) {
      // A table may ask for nothing at some anchors, so only the order of work is sure: an end before a start.
      if (atEnd && lo !== null && lo.every((slot, anchor) => slot >= anchor)) {
        tail[from] = Math.max(tail[from]!, tail[id]! + shape.leastSlots);
      }
    }
  }
  return tail;
}
