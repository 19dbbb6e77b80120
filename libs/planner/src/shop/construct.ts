import type { SeededRandom } from '@archwright/kernel';
import type { ShopLayout } from './shop-layout.js';
import type { ShopOrder } from './tabu-search.js';

/**
 * A first plan: one job after the other gets its next operation placed, on the machine that ends it first.
 *
 * @param random the job is drawn; null takes the one with the most work left, so that long jobs do not start last
 */
export function construct(layout: ShopLayout, random: SeededRandom | null, into: ShopOrder): void {
  const { jobCount, slotOfJob, operations } = layout;
  const next = Int32Array.from({ length: jobCount }, (_, job) => slotOfJob[job]! + 1);
  const workLeft = new Int32Array(jobCount);
  for (const id of operations) workLeft[layout.job[id]!]! += leastDuration(layout, id);
  const open = Array.from({ length: jobCount }, (_, job) => job).filter((job) => next[job]! < slotOfJob[job + 1]!);
  const jobFree = new Int32Array(jobCount);
  const machineFree = new Int32Array(layout.machineCount);
  for (let at = 0; open.length > 0; at++) {
    let chosen = 0;
    if (random !== null) chosen = random.nextBelow(open.length);
    else
      for (let other = 1; other < open.length; other++) {
        if (workLeft[open[other]!]! > workLeft[open[chosen]!]!) chosen = other;
      }
    const job = open[chosen]!;
    const id = next[job]!++;
    let machine = -1;
    let earliest = Number.MAX_SAFE_INTEGER;
    for (let choice = layout.choicesFrom[id]!; choice < layout.choicesFrom[id + 1]!; choice++) {
      const on = layout.choices[choice]!;
      const end = Math.max(jobFree[job]!, machineFree[on]!) + layout.durationOn[id * layout.machineCount + on]!;
      if (end >= earliest) continue;
      earliest = end;
      machine = on;
    }
    jobFree[job] = earliest;
    machineFree[machine] = earliest;
    workLeft[job]! -= leastDuration(layout, id);
    into.list[at] = id;
    into.machines[id] = machine;
    if (next[job] === slotOfJob[job + 1]) open.splice(chosen, 1);
  }
}

/** Of an operation over its machines. */
export function leastDuration(layout: ShopLayout, id: number): number {
  let least = Number.MAX_SAFE_INTEGER;
  for (let choice = layout.choicesFrom[id]!; choice < layout.choicesFrom[id + 1]!; choice++) {
    least = Math.min(least, layout.durationOn[id * layout.machineCount + layout.choices[choice]!]!);
  }
  return least;
}
