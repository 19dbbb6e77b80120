import { ChainCache } from '../chain/cache.js';
import { cheapestPlans } from '../chain/explore.js';
import type { ChainPlan, ChainProblem } from '../chain/model.js';
import { objectiveFor, type Axis } from '../chain/objective.js';
import { planOf } from '../chain/plan.js';
import { prepareChain } from '../chain/prepare.js';
import { wholeRegions } from '../chain/region.js';

/** Where a visit is now. */
export interface CurrentVisit {
  readonly startSlot: number;
  readonly clinic: string;
}

/** What a new plan is to be the least in before anything else. */
export type ReplanAim = 'fewest-moves' | 'earliest' | 'as-wished';

const ORDER: Readonly<Record<ReplanAim, readonly Axis[]>> = {
  'fewest-moves': ['moved', 'day', 'wishes', 'clinicians', 'clinics'],
  earliest: ['day', 'moved', 'wishes', 'clinicians', 'clinics'],
  'as-wished': ['wishes', 'moved', 'day', 'clinicians', 'clinics'],
};

export interface MovedPlan extends ChainPlan {
  /** Visits with a current start that change their start or clinic. */
  readonly movedVisits: number;
}

export function countMoved(plan: ChainPlan, current: readonly (CurrentVisit | null)[]): number {
  return current.filter((now, index) => {
    const visit = plan.visits[index]!;
    return now !== null && (now.startSlot !== visit.startSlot || now.clinic !== visit.clinic);
  }).length;
}

/**
 * The best plans for an aim: fewest moved visits, earliest delivery, or fewest visits against a wish; then the other two
 * of these, changes and ties. Exact.
 *
 * @param current one entry per visit; `null` for a visit without a booking, which costs nothing to place. The problem's
 * resources have to be free where the case's own bookings are, or those count as lost.
 * @param count plans wanted; each differs from the earlier ones at two visits or more up to delivery
 * @returns best first; empty when no plan is left, which says nothing about why
 */
export function replanChain(
  problem: ChainProblem,
  current: readonly (CurrentVisit | null)[],
  aim: ReplanAim,
  count: number,
  cache = new ChainCache(),
): MovedPlan[] {
  const prepared = prepareChain(problem, cache);
  const objective = objectiveFor(prepared, ORDER[aim], current);
  const plans: MovedPlan[] = [];
  if (count > 0) {
    for (const best of cheapestPlans(prepared, wholeRegions(prepared), objective, [])) {
      const plan = planOf(prepared, best, cache);
      plans.push({ ...plan, movedVisits: countMoved(plan, current) });
      if (plans.length >= count) break;
    }
  }
  return plans;
}
