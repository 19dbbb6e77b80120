import type { PlacementRule, SlotBits } from '@archwright/planner';
import { SLOT_MINUTES } from './axis.js';

/** A clinician's day costs one more from each of these shares of its working time on, the visit itself included. */
const FULL_PERCENT = [50, 70, 85];
/** Free time next to a visit that is shorter is a scrap: no visit of the shipped paths fits into it. */
const SCRAP_MINUTES = 15;
const SCRAP_SLOTS = SCRAP_MINUTES / SLOT_MINUTES;

/**
 * The placement rule: which of two plans is better that are equal in delivery day, wishes and changes of clinician and
 * clinic. First the buffer, so that work is back some time before it is used: four hours, a day, two days. Then what each
 * start costs its clinician ({@link placementCosts}): how full the day becomes, and one for each scrap of free time that is
 * left before and after the visit. Then the earlier starts. Project default; common practice, no source.
 */
export const PLACEMENT: PlacementRule = { bufferSteps: [48, 288, 576], mostCost: FULL_PERCENT.length + 2 };

/** How a person's working time lies in the days of the axis. */
export class PersonDays {
  /** First slot of each day, and the end of the axis. */
  private readonly firstSlots: number[] = [];
  /** Slots worked and slots taken of these, by day. */
  private readonly worked: number[] = [];
  private readonly taken: number[] = [];
  /** Ends of the free stretches, one after the other: first slot, and the slot behind the last. */
  private readonly stretches: number[] = [];

  /**
   * @param working slots in which the person works, whether taken or not
   * @param free of these, the slots that nothing takes
   * @param days local day number of each slot
   */
  constructor(
    working: SlotBits,
    free: SlotBits,
    private readonly days: Int32Array,
  ) {
    let isFree = false;
    for (let slot = 0; slot < days.length; slot++) {
      if (slot === 0 || days[slot] !== days[slot - 1]) {
        this.firstSlots.push(slot);
        this.worked.push(0);
        this.taken.push(0);
      }
      const day = this.worked.length - 1;
      if (isFree !== (bitAt(free, slot) === 1)) {
        isFree = !isFree;
        this.stretches.push(slot);
      }
      const works = bitAt(working, slot);
      this.worked[day] = (this.worked[day] ?? 0) + works;
      if (!isFree) this.taken[day] = (this.taken[day] ?? 0) + works;
    }
    if (isFree) this.stretches.push(days.length);
    this.firstSlots.push(days.length);
  }

  /** Cost of each start of a visit of so many slots, from 0 to the rule's most; of starts that are not free it says nothing. */
  placementCosts(lengthSlots: number): Uint8Array {
    const costs = new Uint8Array(this.days.length);
    this.worked.forEach((worked, day) => {
      const after = (this.taken[day] ?? 0) + lengthSlots;
      const level = FULL_PERCENT.filter((percent) => 100 * after >= percent * worked).length;
      if (worked > 0) costs.fill(level, this.firstSlots[day], this.firstSlots[day + 1]);
    });
    for (let at = 0; at < this.stretches.length; at += 2) {
      const [from = 0, until = 0] = this.stretches.slice(at, at + 2);
      const last = until - lengthSlots;
      for (let scrap = 1; scrap < SCRAP_SLOTS; scrap++) {
        if (from + scrap <= last) costs[from + scrap] = (costs[from + scrap] ?? 0) + 1;
        if (last - scrap >= from) costs[last - scrap] = (costs[last - scrap] ?? 0) + 1;
      }
    }
    return costs;
  }
}

const bitAt = (bits: SlotBits, slot: number): number => ((bits[slot >> 5] ?? 0) >>> (slot & 31)) & 1;
