import { planOffers, type ChainPlan } from '@archwright/planner';
import { fromChainPlan, type CasePlan, type PlanRequest } from '@archwright/protocol';
import { Translation } from './translation.js';

/** A plan with the figures it was chosen by. */
export interface FoundPlan {
  readonly plan: CasePlan;
  /** Integers that the plan was the least in. */
  readonly objective:
    { readonly vector: ChainPlan['vector']; readonly ties: ChainPlan['ties'] } | { readonly dropped: number };
}

/**
 * Exact for the request: several different plans, the best for each question first.
 *
 * @param translation kept by those who ask about the same weeks again
 */
export function findOffers(request: PlanRequest, count: number, translation = new Translation(request)): FoundPlan[] {
  const { problem, names } = translation.of(request);
  return planOffers(problem, count, translation.cache).offers.map((offer) => ({
    plan: fromChainPlan(offer, names),
    objective: { vector: offer.vector, ties: offer.ties },
  }));
}
