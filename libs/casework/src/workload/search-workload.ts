import { dateOfDay } from '@archwright/calendar';
import {
  WorkloadSearch,
  gapPercent,
  verdictOf,
  workloadFaults,
  type Verdict,
  type WorkloadAim,
} from '@archwright/planner';
import type { WorkloadBound, WorkloadObjective, WorkloadPlan, WorkloadProblem } from '@archwright/planner';
import {
  movedWork,
  outlookOf,
  toWorkload,
  type MovedWork,
  type WorkOutlook,
  type WorkloadRequest,
} from '@archwright/protocol';

/** A coordinator who watches wants to see it move, and the database not more than that. */
const REPORT_EVERY_MS = 400;

/** One search: what is allowed in it, and what makes it the same again. */
export interface WorkloadQuestion {
  readonly request: WorkloadRequest;
  readonly aim: WorkloadAim;
  readonly seed: number;
  readonly streams: number;
  /** Ends after so long, or after so many epochs: the epochs alone decide what is found. */
  readonly until: { readonly milliseconds: number } | { readonly epochs: number };
}

export interface WorkloadProgress {
  readonly epochs: number;
  readonly objective: WorkloadObjective;
}

/** Minutes taken of minutes open, of one work centre on one day. */
export interface LoadOfDay {
  readonly workCentreId: string;
  readonly on: string;
  readonly minutes: number;
  readonly openMinutes: number;
}

/** How a plan stands. */
export interface PlanStanding {
  readonly objective: WorkloadObjective;
  readonly outlook: readonly WorkOutlook[];
  readonly load: readonly LoadOfDay[];
}

export interface WorkloadFound {
  readonly inForce: PlanStanding;
  readonly best: PlanStanding & { readonly moved: readonly MovedWork[] };
  readonly bound: Pick<WorkloadBound, 'lateness' | 'by'>;
  /** The bound in minutes. */
  readonly sureMinutes: number;
  readonly verdict: Verdict;
  readonly gapPercent: number;
  readonly seed: number;
  readonly streams: number;
  readonly epochs: number;
}

/** Searches for as long as the question says. The plan is checked against every rule before it is answered. */
export function searchWorkload(
  { request, aim, seed, streams, until }: WorkloadQuestion,
  report: (progress: WorkloadProgress) => void,
): WorkloadFound {
  const { problem, names } = toWorkload(request);
  const search = new WorkloadSearch(problem, { seed, streams, aim });
  const startedMs = performance.now();
  const isOver = (): boolean =>
    'epochs' in until ? search.epochs >= until.epochs : performance.now() - startedMs >= until.milliseconds;
  let reportedMs = startedMs;
  while (!search.isProved && !isOver()) {
    search.runEpoch();
    if (performance.now() - reportedMs < REPORT_EVERY_MS) continue;
    reportedMs = performance.now();
    report({ epochs: search.epochs, objective: search.bestObjective });
  }
  const { best, bound, inForce, epochs } = search;
  const faults = workloadFaults(problem, best);
  if (faults.length > 0) throw new Error(`The planner made a plan that breaks rules: ${faults.slice(0, 3).join('; ')}`);
  const standing = (plan: WorkloadPlan): PlanStanding => ({
    objective: plan.objective,
    outlook: outlookOf(plan, problem, bound, names),
    load: loadOf(plan, problem, names.axis.slotMinutes),
  });
  return {
    inForce: standing(inForce),
    best: { ...standing(best), moved: movedWork(best, problem, names) },
    bound: { lateness: bound.lateness, by: bound.by },
    sureMinutes: bound.lateness * names.axis.slotMinutes,
    verdict: verdictOf(best.objective.lateness, bound.lateness),
    gapPercent: gapPercent(best.objective.lateness, bound.lateness),
    seed,
    streams,
    epochs,
  };
}

function loadOf({ load }: WorkloadPlan, { centres }: WorkloadProblem, slotMinutes: number): LoadOfDay[] {
  return load.map(({ centre, day, loadSlots, openSlots }) => ({
    workCentreId: centres[centre]?.key ?? '',
    on: dateOfDay(day),
    minutes: loadSlots * slotMinutes,
    openMinutes: openSlots * slotMinutes,
  }));
}
