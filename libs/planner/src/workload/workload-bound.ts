import { earliestTimes, leastTails, type EarliestTimes } from './empty-bench.js';
import type { WorkloadLayout } from './layout.js';
import { energyLateness, freeTime, preemptiveLateness, type CentreWork } from './one-centre-bound.js';

/** Lateness that no plan avoids in which every operation has room, and by which argument. */
export interface WorkloadBound {
  readonly lateness: number;
  /** `each-job`: all jobs as if each were alone. The others look at one centre as well. */
  readonly by: 'each-job' | 'energy' | 'one-centre';
  /** Least lateness of each job, in slots and not weighted: late for sure, whatever is moved. */
  readonly ofJob: readonly number[];
}

export function workloadBound(layout: WorkloadLayout): WorkloadBound {
  const { problem } = layout;
  const times = earliestTimes(layout);
  const ofJob = problem.jobs.map((_, job) => leastLateness(layout, times, job));
  const eachJob = ofJob.reduce((sum, slots, job) => sum + slots * problem.jobs[job]!.weight, 0);
  let best: WorkloadBound = { lateness: eachJob, by: 'each-job', ofJob };
  const tails = leastTails(layout);
  problem.centres.forEach((centre, at) => {
    const works = worksAt(layout, times, tails, at, ofJob);
    const free = freeTime(centre, problem.slotCount, onlyHandsOn(layout, at));
    const byEnergy = eachJob + energyLateness(works, free);
    if (byEnergy > best.lateness) best = { lateness: byEnergy, by: 'energy', ofJob };
    const preemptive = preemptiveLateness(works, free);
    if (preemptive > best.lateness) best = { lateness: preemptive, by: 'one-centre', ofJob };
  });
  return best;
}

/** In the alternative that is soonest. A job without room ends with the axis. */
function leastLateness({ problem, ofJob, slotCount }: WorkloadLayout, { end }: EarliestTimes, job: number): number {
  return Math.min(
    ...problem.jobs[job]!.alternatives.map(({ dueSlot }, alternative) => {
      if (dueSlot === null) return 0;
      const last = ofJob[job]![alternative]!.reduce((most, id) => Math.max(most, Math.min(end[id]!, slotCount)), 0);
      return Math.max(0, last - dueSlot);
    }),
  );
}

/** Jobs that have to do their work at this centre. Shared runs take less than their units say and are left out. */
function worksAt(
  { problem, operations, ofJob, slotCount }: WorkloadLayout,
  { start }: EarliestTimes,
  tails: Int32Array,
  centre: number,
  sure: readonly number[],
): CentreWork[] {
  return problem.jobs.flatMap(({ alternatives, weight }, job): CentreWork[] => {
    const [only, ...others] = alternatives;
    if (only?.dueSlot == null || others.length > 0) return [];
    const own = ofJob[job]![0]!.map((id) => operations[id]!).filter(
      (operation) => operation.centre === centre && operation.holdsPlace && operation.units === 0,
    );
    // What has no room costs a limit first, which no lateness speaks of.
    if (own.length === 0 || ofJob[job]![0]!.some((id) => start[id]! > slotCount)) return [];
    return [
      {
        head: Math.min(...own.map(({ id }) => start[id]!)),
        slots: own.reduce((sum, { shape }) => sum + shape.heldSlots, 0),
        dueSlot: only.dueSlot - Math.min(...own.map(({ id }) => tails[id]!)),
        weight,
        sureLateness: weight * sure[job]!,
      },
    ];
  });
}

function onlyHandsOn({ operations }: WorkloadLayout, centre: number): boolean {
  return operations.every(
    (operation) => operation.centre !== centre || operation.shape.held.every(({ pauses }) => pauses),
  );
}
