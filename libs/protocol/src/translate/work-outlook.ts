import type { PlacedOperation, WorkloadBound, WorkloadPlan, WorkloadProblem } from '@archwright/planner';
import { SLOT_MINUTES } from './axis.js';
import type { WorkloadNames } from './workload.js';

/** What becomes of a stretch of work in a plan, and why. */
export interface WorkOutlook {
  readonly caseId: string;
  readonly phase: string;
  /** By which it misses its visit. */
  readonly lateMinutes: number;
  /** Of these, what no plan avoids: the work takes longer than lies between its visits, were the benches empty. */
  readonly sureMinutes: number;
  /** Where it waits the longest for a bench, nights included; null when it waits nowhere. */
  readonly longestWait: { readonly step: string; readonly workCentreId: string; readonly minutes: number } | null;
}

export function outlookOf(
  plan: WorkloadPlan,
  problem: WorkloadProblem,
  bound: WorkloadBound,
  names: WorkloadNames,
): WorkOutlook[] {
  return names.jobs.map(({ work, phase }, number) => {
    const { dueSlot } = problem.jobs[number]?.alternatives[plan.chosen[number] ?? 0] ?? { dueSlot: null };
    const placed = plan.placed.filter(({ job }) => job === number);
    const ends = placed.map(({ startSlot, endSlot }) => (startSlot < 0 ? problem.slotCount : endSlot));
    const late = dueSlot === null ? 0 : Math.max(0, Math.max(...ends) - dueSlot);
    return {
      caseId: work.caseId,
      phase: phase.code,
      lateMinutes: late * SLOT_MINUTES,
      sureMinutes: (bound.ofJob[number] ?? 0) * SLOT_MINUTES,
      longestWait: longestWait(placed, plan.chosen[number] ?? 0, problem),
    };
  });
}

/** From when everything before a step is done, and it may begin, until it begins. */
function longestWait(
  placed: readonly PlacedOperation[],
  chosen: number,
  problem: WorkloadProblem,
): WorkOutlook['longestWait'] {
  let longest: WorkOutlook['longestWait'] = null;
  for (const { job, operation, startSlot } of placed) {
    const alternative = problem.jobs[job]?.alternatives[chosen];
    const own = alternative?.operations[operation];
    if (own === undefined || startSlot < 0) continue;
    const ready = (alternative?.lags ?? [])
      .filter(({ to }) => to === operation)
      .map(({ from, anchor, lo }) => {
        const before = placed.find((each) => each.operation === from);
        return lo?.[Math.max(0, (anchor === 'end' ? before?.endSlot : before?.startSlot) ?? 0)] ?? 0;
      });
    const minutes = (startSlot - Math.max(own.firstSlot, ...ready)) * SLOT_MINUTES;
    const workCentreId = problem.centres[own.centre]?.key ?? '';
    if (minutes > (longest?.minutes ?? 0)) longest = { step: own.key, workCentreId, minutes };
  }
  return longest;
}
