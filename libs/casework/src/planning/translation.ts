import { ChainCache, type ChainProblem } from '@archwright/planner';
import { PlanningAxis, toChainProblem, type PlanNames, type PlanRequest } from '@archwright/protocol';
import { shareEqual } from './share-equal.js';

interface Translated {
  readonly problem: ChainProblem;
  readonly names: PlanNames;
}

/** Translates variations of one request: what they have in common is made once, and found again by the search's cache. */
export class Translation {
  readonly cache = new ChainCache();
  private axis: PlanningAxis | null = null;
  private last: ChainProblem | null = null;

  /** @throws {DomainError} when the request cannot be stated, such as without a laboratory for its work */
  of(request: PlanRequest): Translated {
    this.axis ??= new PlanningAxis(request.nowMs, request.horizonWeeks);
    const { problem, names } = toChainProblem(request, this.axis);
    this.last = this.last === null ? problem : shareEqual(this.last, problem);
    return { problem: this.last, names };
  }
}
