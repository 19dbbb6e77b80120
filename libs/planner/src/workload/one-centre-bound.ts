import { hasBit } from '../chain/bits.js';
import type { WorkloadCentre } from './model.js';

/** All of one job's work at a centre, as if it could be interrupted at will and spread over all places. */
export interface CentreWork {
  readonly head: number;
  /** Slots of one place. */
  readonly slots: number;
  /** Its end is late from here on. */
  readonly dueSlot: number;
  readonly weight: number;
  /** Lateness of its job that is sure without a look at the others, weighted. */
  readonly sureLateness: number;
}

/** Free time of all places of a centre, added up from the beginning of the axis. */
export function freeTime({ open, places }: WorkloadCentre, slotCount: number, handsOnOnly: boolean): Int32Array {
  const sum = new Int32Array(slotCount + 1);
  for (let slot = 0; slot < slotCount; slot++) {
    const isOpen = !handsOnOnly || hasBit(open, slot);
    const free = isOpen ? places.filter((place) => hasBit(place.free, slot)).length : 0;
    sum[slot + 1] = sum[slot]! + free;
  }
  return sum;
}

/** First slot until which so much free time has passed; the end of the axis when there is not so much. */
function slotWith(free: Int32Array, time: number): number {
  let [low, high] = [0, free.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (free[middle]! >= time) high = middle;
    else low = middle + 1;
  }
  return low;
}

/**
 * Lateness beyond what is sure for each job, by energy: of the work that can't begin before some slot, something ends no
 * earlier than the free time suffices for all of it; at best that is what costs the least.
 */
export function energyLateness(works: readonly CentreWork[], free: Int32Array): number {
  let most = 0;
  for (const { head } of works) {
    const later = works.filter((work) => work.head >= head).sort((one, other) => one.dueSlot - other.dueSlot);
    let slots = 0;
    later.forEach((_, at) => {
      slots += later[at]!.slots;
      const end = slotWith(free, free[Math.min(head, free.length - 1)]! + slots);
      const extra = later
        .slice(0, at + 1)
        .map(({ weight, dueSlot, sureLateness }) => weight * Math.max(0, end - dueSlot) - sureLateness);
      most = Math.max(most, Math.min(...extra));
    });
  }
  return most;
}

/**
 * Sum of lateness in the pre-emptive schedule of a machine that is as fast as all places together: always the ready
 * work with the least left. No schedule has its n-th end sooner, and ends matched with due slots in rising order cost
 * least (after Chu 1992); every job counts with the smallest weight.
 */
export function preemptiveLateness(works: readonly CentreWork[], free: Int32Array): number {
  if (works.length === 0) return 0;
  const slotCount = free.length - 1;
  const byHead = works
    .map(({ head, slots }) => ({ head: free[Math.min(head, slotCount)]!, left: slots }))
    .sort((one, other) => one.head - other.head);
  const ready: { left: number }[] = [];
  const ends: number[] = [];
  let now = 0;
  for (let next = 0; next < byHead.length || ready.length > 0;) {
    if (ready.length === 0) now = Math.max(now, byHead[next]!.head);
    while (next < byHead.length && byHead[next]!.head <= now) ready.push(byHead[next++]!);
    ready.sort((one, other) => one.left - other.left);
    const shortest = ready[0]!;
    const run = Math.min(shortest.left, (byHead[next]?.head ?? Infinity) - now);
    now += run;
    shortest.left -= run;
    if (shortest.left > 0) continue;
    ready.shift();
    ends.push(slotWith(free, now));
  }
  const dues = works.map(({ dueSlot }) => dueSlot).sort((one, other) => one - other);
  const weight = Math.min(...works.map((work) => work.weight));
  return weight * ends.reduce((sum, end, at) => sum + Math.max(0, end - dues[at]!), 0);
}
