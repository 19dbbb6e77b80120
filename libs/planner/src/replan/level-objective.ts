import type { WorkloadAim } from '../workload/objective.js';
import type { CaseChange, JointCase } from './joint-case.js';

/** How a case stands as long as it stays as it is planned now. */
export interface CaseStanding {
  /** Slots by which its work misses its visits. */
  readonly lateness: number;
  /** Slots between first start and last end, over all its stretches of work. */
  readonly inProgress: number;
}

/**
 * What choosing visits again is judged by, all to be small and whole, compared one after the other. Limits are not among
 * it: a case that is planned anew breaks none, and one that is not stays as it is.
 */
export interface LevelObjective {
  readonly lateness: number;
  /** Each costs a call. */
  readonly movedVisits: number;
  readonly movedSteps: number;
  /** As of the workload: slots above 85 % of the open ones, squared, over all centres and days. */
  readonly overload: number;
  readonly inProgress: number;
}

/** The order of the workload's aims, with visits before steps where it counts what moves. */
const ORDER: Readonly<Record<WorkloadAim, readonly (keyof LevelObjective)[]>> = {
  'fewest-moves': ['lateness', 'movedVisits', 'movedSteps', 'overload', 'inProgress'],
  'level-load': ['lateness', 'overload', 'movedVisits', 'movedSteps', 'inProgress'],
};

/** Below 0 when the first is better; 0 when they are equal in everything. */
export function compareLevels(one: LevelObjective, other: LevelObjective, aim: WorkloadAim): number {
  for (const name of ORDER[aim]) if (one[name] !== other[name]) return one[name] - other[name];
  return 0;
}

/** Steps that leave their time, or are planned although they have none now. */
export function movedSteps({ operations }: JointCase, { plan }: CaseChange): number {
  const now = new Map(operations.map(({ operation, startSlot }) => [operation, startSlot]));
  return plan.operations.filter(({ operation, startSlot }) => now.get(operation) !== startSlot).length;
}

/** A plan is never late: its work is back before each visit. */
export function standingAfter({ plan }: CaseChange): CaseStanding {
  const spans = new Map<string, { first: number; last: number }>();
  for (const { phase, startSlot, endSlot } of plan.operations) {
    const span = spans.get(phase) ?? { first: startSlot, last: endSlot };
    spans.set(phase, { first: Math.min(span.first, startSlot), last: Math.max(span.last, endSlot) });
  }
  return { lateness: 0, inProgress: [...spans.values()].reduce((sum, { first, last }) => sum + last - first, 0) };
}
