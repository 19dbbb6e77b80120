import {
  ChainCache,
  planOffers,
  replanChain,
  type ChainPlan,
  type ChainProblem,
  type CurrentVisit,
  type OfferReason,
} from '@archwright/planner';
import { fromChainPlan, toChainProblem, type CasePlan, type PlanRequest } from '@archwright/protocol';

/** A plan with the figures it was chosen by. */
export interface FoundPlan {
  readonly plan: CasePlan;
  readonly reasons: readonly OfferReason[];
  /** Integers that the plan was the least in. */
  readonly objective:
    { readonly vector: ChainPlan['vector']; readonly ties: ChainPlan['ties'] } | { readonly dropped: number };
}

/** Exact for the request: several different plans, the best for each question first. */
export function findOffers(request: PlanRequest, count: number): FoundPlan[] {
  const { problem, names } = toChainProblem(request);
  return planOffers(problem, count).offers.map((offer) => ({
    plan: fromChainPlan(offer, names),
    reasons: offer.reasons,
    objective: { vector: offer.vector, ties: offer.ties },
  }));
}

/**
 * How many of the first visits to come can be placed together, whatever follows them: all when a plan exists.
 *
 * @throws {DomainError} when the request as stated can never have a plan
 */
export function placeableVisits(request: PlanRequest): number {
  const { problem } = toChainProblem(request);
  let visits = 0;
  while (visits < problem.visits.length && hasPlanForFirst(problem, visits + 1)) visits++;
  return visits;
}

function hasPlanForFirst(problem: ChainProblem, visits: number): boolean {
  const shorter = {
    ...problem,
    visits: problem.visits
      .slice(0, visits)
      .map((visit) => ({ ...visit, follows: visit.follows === null ? null : Math.min(visit.follows, visits - 1) })),
    deliveryVisit: Math.min(problem.deliveryVisit, visits - 1),
    lags: problem.lags.filter(({ to }) => to < visits),
    phases: problem.phases.filter(({ before }) => before < visits),
  };
  const nowhere: (CurrentVisit | null)[] = shorter.visits.map(() => null);
  return replanChain(shorter, nowhere, 1, new ChainCache()).length > 0;
}
