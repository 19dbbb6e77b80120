import type { PlacedOperation, WorkloadObjective, WorkloadPlan, WorkloadProblem } from './model.js';
import { objectiveOf, workloadFaults } from './verify-workload.js';

/**
 * The best objective by trying every start at every place, judged by the verifier alone. For a few operations on an axis of
 * a few slots; an operation is left without a place only where nothing else is allowed.
 */
export function bestObjective(
  problem: WorkloadProblem,
  order: readonly (keyof WorkloadObjective)[],
): WorkloadObjective | null {
  let best: WorkloadObjective | null = null;
  const isBetter = (one: WorkloadObjective): boolean => {
    if (best === null) return true;
    for (const name of order) if (one[name] !== best[name]) return one[name] < best[name];
    return false;
  };
  const finish = (chosen: number[], placed: PlacedOperation[]): void => {
    const bare: WorkloadPlan = {
      chosen,
      placed,
      load: [],
      objective: { violations: 0, lateness: 0, disruption: 0, overload: 0, inProgress: 0 },
    };
    const objective = objectiveOf(problem, bare);
    if (!isBetter(objective)) return;
    if (workloadFaults(problem, { ...bare, objective }).length === 0) best = objective;
  };
  const place = (chosen: number[], wanted: readonly [number, number][], placed: PlacedOperation[]): void => {
    const next = wanted[placed.length];
    if (next === undefined) {
      finish(chosen, placed);
      return;
    }
    const [job, operation] = next;
    const { centre, segments } = problem.jobs[job]!.alternatives[chosen[job]!]!.operations[operation]!;
    const holds = segments.some(({ holdsPlace }) => holdsPlace);
    const places = holds ? problem.centres[centre]!.places.map(({ key }) => key) : [null];
    for (const key of places) {
      for (let startSlot = 0; startSlot < problem.slotCount; startSlot++) {
        const endSlot = endOf(problem, centre, segments, startSlot);
        if (endSlot > problem.slotCount) break;
        place(chosen, wanted, [...placed, { job, operation, startSlot, endSlot, place: key, holds: [] }]);
      }
    }
  };
  const choose = (chosen: number[]): void => {
    if (chosen.length === problem.jobs.length) {
      const wanted = problem.jobs.flatMap(({ alternatives }, job) =>
        alternatives[chosen[job]!]!.operations.map((_, operation): [number, number] => [job, operation]),
      );
      place(chosen, wanted, []);
      return;
    }
    problem.jobs[chosen.length]!.alternatives.forEach((_, alternative) => {
      choose([...chosen, alternative]);
    });
  };
  choose([]);
  return best;
}

function endOf(
  { centres, slotCount }: WorkloadProblem,
  centre: number,
  segments: readonly { readonly slots: number; readonly mode: string }[],
  start: number,
): number {
  let slot = start;
  for (const { slots, mode } of segments) {
    for (let left = slots; left > 0; slot++) {
      if (slot >= slotCount) return slotCount + 1;
      const isOpen = ((centres[centre]!.open[slot >> 5]! >>> (slot & 31)) & 1) === 1;
      if (mode === 'runs-on' || isOpen) left--;
    }
  }
  return slot;
}
