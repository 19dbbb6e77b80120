import { nextBit } from './bits.js';
import type { PreparedChain } from './prepare.js';
import { firstStart, type Region } from './region.js';

/** How early the delivery can be at best, by the start of one visit; wishes and changes left aside. */
export class EarliestDelivery {
  /** Earliest starts of the next visit by start slot, one table per way to join the two; by visit before delivery. */
  private readonly bounds: readonly (readonly Int32Array[])[];
  private readonly first: number;

  constructor(
    private readonly prepared: PreparedChain,
    private readonly region: Region,
  ) {
    const { problem, links } = prepared;
    const optionsOf = (visit: number) => [...new Set(region.states[visit]!.map(({ option }) => option))];
    this.bounds = Array.from({ length: problem.deliveryVisit }, (_, visit) => {
      const link = links.find(({ child }) => child === visit)!;
      return optionsOf(visit).flatMap((early) =>
        optionsOf(visit + 1).flatMap((late) => link.pieces(early, late).map(({ lo }) => lo)),
      );
    });
    this.first = problem.dayOfSlot[firstStart(region, problem.deliveryVisit)]!;
  }

  /** No chain with this start delivers before that day; infinite when there is none. */
  day(visit: number, slot: number): number {
    const { dayOfSlot, deliveryVisit, slotCount } = this.prepared.problem;
    if (visit > deliveryVisit) return this.first;
    let start = slot;
    for (let at = visit; at < deliveryVisit; at++) {
      let bound = slotCount;
      for (const lo of this.bounds[at]!) if (lo[start]! < bound) bound = lo[start]!;
      start = slotCount;
      for (const bits of this.region.starts[at + 1]!) {
        const next = nextBit(bits, bound);
        if (next >= 0 && next < start) start = next;
      }
      if (start === slotCount) return Infinity;
    }
    return dayOfSlot[start]!;
  }
}
