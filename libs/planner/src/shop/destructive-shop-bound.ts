import { leastDuration } from './construct.js';
import { raiseHeads, type MachineWindows } from './edge-finding.js';
import { leastStanding } from './least-standing.js';
import type { ShopLayout } from './shop-layout.js';

/**
 * The least makespan that edge finding cannot refute on the machines, each with the operations that only it can do;
 * others take part through their jobs.
 *
 * @param least a bound that is known already
 * @param most the makespan of a plan
 */
export function destructiveShopBound(layout: ShopLayout, least: number, most: number): number {
  const durations = new Int32Array(layout.size);
  for (const id of layout.operations) durations[id] = leastDuration(layout, id);
  const machines = ownOperations(layout);
  return leastStanding(least, most, (makespan) => stands(layout, machines, durations, makespan));
}

function ownOperations({ machineCount, operations, choices, choicesFrom }: ShopLayout): Int32Array[] {
  return Array.from({ length: machineCount }, (_, machine) =>
    operations.filter((id) => choicesFrom[id + 1]! - choicesFrom[id]! === 1 && choices[choicesFrom[id]!]! === machine),
  );
}

function stands(layout: ShopLayout, machines: readonly Int32Array[], durations: Int32Array, makespan: number): boolean {
  const forward: MachineWindows = {
    heads: new Int32Array(layout.size),
    tails: new Int32Array(layout.size),
    durations,
  };
  const backward: MachineWindows = { heads: forward.tails, tails: forward.heads, durations };
  for (let before = -1; ;) {
    passAlongJobs(layout, forward);
    for (const ids of machines) {
      if (!raiseHeads(ids, forward, makespan) || !raiseHeads(ids, backward, makespan)) return false;
    }
    const sum = forward.heads.reduce((total, head, id) => total + head + forward.tails[id]!, 0);
    if (sum === before) return layout.operations.every((id) => fits(forward, id, makespan));
    before = sum;
  }
}

function fits({ heads, tails, durations }: MachineWindows, id: number, makespan: number): boolean {
  return heads[id]! + durations[id]! + tails[id]! <= makespan;
}

/** The slot of a job keeps head, tail and duration of 0, so neighbours need no question. */
function passAlongJobs({ operations }: ShopLayout, { heads, tails, durations }: MachineWindows): void {
  for (const id of operations) heads[id] = Math.max(heads[id]!, heads[id - 1]! + durations[id - 1]!);
  for (let at = operations.length - 1; at >= 0; at--) {
    const id = operations[at]!;
    tails[id] = Math.max(tails[id]!, tails[id + 1]! + durations[id + 1]!);
  }
}
