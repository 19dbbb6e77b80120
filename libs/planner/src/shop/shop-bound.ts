import { leastDuration } from './construct.js';
import { jacksonBound, type OneMachineOperation } from './jackson.js';
import type { ShopLayout } from './shop-layout.js';

interface ShopOperation extends OneMachineOperation {
  /** Machines that may do it, ascending. */
  readonly machines: readonly number[];
}

/**
 * A makespan below which no plan can be: the longest job; for each machine the pre-emptive schedule of what only it can
 * do; for groups of machines the work that cannot leave the group, shared evenly.
 */
export function shopBound(layout: ShopLayout): number {
  const operations = withHeadsAndTails(layout);
  let bound = 0;
  for (const { head, duration, tail } of operations) bound = Math.max(bound, head + duration + tail);
  for (let machine = 0; machine < layout.machineCount; machine++) {
    const own = operations.filter(({ machines }) => machines.length === 1 && machines[0] === machine);
    bound = Math.max(bound, jacksonBound(own));
  }
  if (layout.isFlexible)
    for (const group of groupsOf(operations)) bound = Math.max(bound, groupBound(group, operations));
  return bound;
}

function withHeadsAndTails(layout: ShopLayout): ShopOperation[] {
  const { slotOfJob, jobCount, choices, choicesFrom } = layout;
  const found: ShopOperation[] = [];
  for (let job = 0; job < jobCount; job++) {
    const ids = Array.from({ length: slotOfJob[job + 1]! - slotOfJob[job]! - 1 }, (_, at) => slotOfJob[job]! + 1 + at);
    let tail = ids.reduce((sum, id) => sum + leastDuration(layout, id), 0);
    let head = 0;
    for (const id of ids) {
      const duration = leastDuration(layout, id);
      tail -= duration;
      const machines = [...choices.subarray(choicesFrom[id], choicesFrom[id + 1])].sort((a, b) => a - b);
      found.push({ head, duration, tail, machines });
      head += duration;
    }
  }
  return found;
}

/** The sets of machines that some operation is bound to, and the unions of two of them. */
function groupsOf(operations: readonly ShopOperation[]): number[][] {
  const bound = new Map(operations.map(({ machines }) => [machines.join(), machines]));
  const groups = new Map<string, number[]>();
  for (const first of bound.values()) {
    for (const second of bound.values()) {
      const union = [...new Set([...first, ...second])].sort((a, b) => a - b);
      if (union.length > 1) groups.set(union.join(), union);
    }
  }
  const all = [...new Set(operations.flatMap(({ machines }) => machines))].sort((a, b) => a - b);
  groups.set(all.join(), all);
  return [...groups.values()];
}

/** Work that the group alone can do and that lies between a head and a tail, shared by its machines without a break. */
function groupBound(group: readonly number[], operations: readonly ShopOperation[]): number {
  const members = new Set(group);
  const own = operations
    .filter(({ machines }) => machines.every((machine) => members.has(machine)))
    .sort((a, b) => b.tail - a.tail);
  let bound = 0;
  for (const head of new Set(own.map((operation) => operation.head))) {
    let work = 0;
    for (const operation of own) {
      if (operation.head < head) continue;
      work += operation.duration;
      bound = Math.max(bound, head + Math.ceil(work / group.length) + operation.tail);
    }
  }
  return bound;
}
