import { dateOfDay } from '@archwright/calendar';
import { DomainError } from '@archwright/kernel';
import { earliestDelivery, type ChainProblem } from '@archwright/planner';
import type { PlanRequest } from '@archwright/protocol';
import { Translation } from './translation.js';

/** Delivery of the earliest plan; `on` is null when no denture is placed any more. */
export interface Delivery {
  readonly on: string | null;
}

/** Answers many questions about one case; what they have in common is worked out once. */
export class WhatIf {
  private readonly translation: Translation;

  constructor(request: PlanRequest) {
    this.translation = new Translation(request);
  }

  /** Null when the request has no plan, or can never have one. */
  delivery(request: PlanRequest): Delivery | null {
    try {
      const { problem, names } = this.translation.of(request);
      const day = earliestDelivery(problem, this.translation.cache);
      return day === null ? null : { on: names.placesDenture ? dateOfDay(day) : null };
    } catch (error) {
      if (error instanceof DomainError) return null;
      throw error;
    }
  }

  /**
   * How many of the first visits to come can be placed together, whatever follows them: all when a plan exists.
   *
   * @throws {DomainError} when the request cannot even be stated, such as without a laboratory for its work
   */
  placeableVisits(request: PlanRequest): number {
    const { problem } = this.translation.of(request);
    // A plan for more visits is one for fewer, so halving finds where it ends.
    let placeable = 0;
    let tooMany = problem.visits.length + 1;
    while (tooMany - placeable > 1) {
      const visits = Math.floor((placeable + tooMany) / 2);
      if (earliestDelivery(firstOf(problem, visits), this.translation.cache) === null) tooMany = visits;
      else placeable = visits;
    }
    return placeable;
  }
}

/** The problem of the first visits alone. */
function firstOf(problem: ChainProblem, visits: number): ChainProblem {
  const last = visits - 1;
  return {
    ...problem,
    visits: problem.visits
      .slice(0, visits)
      .map((visit) => ({ ...visit, follows: visit.follows === null ? null : Math.min(visit.follows, last) })),
    deliveryVisit: Math.min(problem.deliveryVisit, last),
    lags: problem.lags.filter(({ to }) => to < visits),
    phases: problem.phases.filter(({ before }) => before < visits),
  };
}
