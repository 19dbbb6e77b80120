import type { Genotype } from './decoder.js';
import type { WorkloadLayout } from './layout.js';

/** The plan in force: every operation in the order of its present start, and not before it. */
export function inForce({ operations, problem }: WorkloadLayout): Genotype {
  const start = operations.map(({ currentStart }) => currentStart);
  // What stands in no plan comes behind what it waits for.
  for (const { id, before } of operations) {
    if (start[id]! < 0) start[id] = Math.max(0, ...before.map(({ from }) => start[from]!));
  }
  const order = operations.map(({ id }) => id).sort((one, other) => start[one]! - start[other]! || one - other);
  return {
    order: Int32Array.from(inOrder(order, operations)),
    notBefore: Int32Array.from(operations, ({ currentStart }) => Math.max(0, currentStart)),
    chosen: new Int32Array(problem.jobs.length),
    repairs: new Int32Array(problem.jobs.length).fill(1),
  };
}

/** Everything as early as it can be, jobs with the least time left first. */
export function leastSlackFirst({ operations, problem, ofJob }: WorkloadLayout): Genotype {
  const slack = problem.jobs.map(({ alternatives }, job) => {
    const work = ofJob[job]![0]!.reduce((sum, id) => sum + operations[id]!.shape.leastSlots, 0);
    return (alternatives[0]!.dueSlot ?? problem.slotCount) - work;
  });
  const order = operations
    .map(({ id }) => id)
    .sort((one, other) => slack[operations[one]!.job]! - slack[operations[other]!.job]! || one - other);
  return {
    order: Int32Array.from(order),
    notBefore: new Int32Array(operations.length),
    chosen: new Int32Array(problem.jobs.length),
    repairs: new Int32Array(problem.jobs.length).fill(1),
  };
}

/** The same order, except that nothing stands before what it waits for. */
function inOrder(order: readonly number[], operations: WorkloadLayout['operations']): number[] {
  const placed = new Set<number>();
  const list: number[] = [];
  const add = (id: number): void => {
    if (placed.has(id)) return;
    placed.add(id);
    for (const { from } of operations[id]!.before) add(from);
    list.push(id);
  };
  order.forEach(add);
  return list;
}
