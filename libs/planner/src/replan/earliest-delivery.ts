import { ChainCache } from '../chain/cache.js';
import { cheapestPlans } from '../chain/explore.js';
import type { ChainProblem } from '../chain/model.js';
import { objectiveFor } from '../chain/objective.js';
import { prepareChain } from '../chain/prepare.js';
import { wholeRegions } from '../chain/region.js';

/**
 * Day on which the earliest complete plan delivers; exact. For questions of the kind "what if": it proves nothing about
 * why there is no plan and is asked again at little cost with the same cache.
 *
 * @returns `dayOfSlot` at the delivery visit's start; `null` when there is no plan
 */
export function earliestDelivery(problem: ChainProblem, cache = new ChainCache()): number | null {
  const prepared = prepareChain(problem, cache);
  const objective = objectiveFor(prepared, ['day', 'wishes', 'clinicians', 'clinics']);
  for (const { starts } of cheapestPlans(prepared, wholeRegions(prepared), objective, [])) {
    return problem.dayOfSlot[starts[problem.deliveryVisit]!]!;
  }
  return null;
}
