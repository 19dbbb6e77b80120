import { ChainCache, type ChainProblem } from '@archwright/planner';
import { PlanningAxis, toChainProblem, type PlanNames, type PlanRequest } from '@archwright/protocol';
import { shareEqual } from './share-equal.js';

interface Translated {
  readonly problem: ChainProblem;
  readonly names: PlanNames;
}

/** When a request is made and how far it looks ahead. */
type Moment = Pick<PlanRequest, 'nowMs' | 'horizonWeeks'>;

/** Translates requests about the same weeks: what they have in common is made once, and found again by the search's cache. */
export class Translation {
  readonly cache = new ChainCache();
  private readonly axis: PlanningAxis;
  private last: ChainProblem | null = null;

  constructor({ nowMs, horizonWeeks }: Moment) {
    this.axis = new PlanningAxis(nowMs, horizonWeeks);
  }

  /** Whether a request is about the same weeks, to the slot; only such requests may be translated. */
  fits({ nowMs, horizonWeeks }: Moment): boolean {
    const { originMs, count } = new PlanningAxis(nowMs, horizonWeeks);
    return originMs === this.axis.originMs && count === this.axis.count;
  }

  /** @throws {DomainError} when the request cannot be stated, such as without a laboratory for its work */
  of(request: PlanRequest): Translated {
    const { problem, names } = toChainProblem(request, this.axis);
    this.last = this.last === null ? problem : shareEqual(this.last, problem);
    return { problem: this.last, names };
  }
}
