import {
  WorkloadSearch,
  gapPercent,
  verdictOf,
  workloadFaults,
  type StreamFind,
  type WorkloadObjective,
} from '@archwright/planner';
import { movedWork, toWorkload } from '@archwright/protocol';
import { standingIn, type StatedWorkload } from './plan-standing.js';
import type { WorkloadFound, WorkloadQuestion } from './search-workload.js';

/** What a thread of a search is told: the question, and which of its streams are this thread's. */
export interface MembersShare {
  readonly question: WorkloadQuestion;
  readonly own: readonly number[];
}

/** How far the streams have come once they have met, and what this thread's found after that. */
export interface MembersState {
  readonly epochs: number;
  readonly isProved: boolean;
  readonly find: StreamFind | null;
}

/** What is found, but for the numbers that make it the same again. */
export type Concluded = Omit<WorkloadFound, 'seed' | 'streams' | 'epochs'>;

/** The streams of one thread. Every thread knows the best plan of all, so that each can say how it stands. */
export class WorkloadMember {
  private readonly search: WorkloadSearch;
  private readonly stated: StatedWorkload;

  constructor({ question: { request, seed, streams, aim }, own }: MembersShare) {
    this.stated = toWorkload(request);
    this.search = new WorkloadSearch(this.stated.problem, { seed, streams, aim }, own);
  }

  /** How the plan stands that the search begins with. */
  get objective(): WorkloadObjective {
    return this.search.bestObjective;
  }

  /** Takes what all streams found in the last epoch, and goes on with the next one unless that is proved best. */
  advance(last: StreamFind | null): MembersState {
    const { search } = this;
    search.meet(last);
    const find = search.isProved ? null : search.runStreams();
    return { epochs: search.epochs, isProved: search.isProved, find };
  }

  /** How the best plan stands beside the one in force. It is checked against every rule before it is answered. */
  conclude(last: StreamFind | null): Concluded {
    const { problem, names } = this.stated;
    this.search.meet(last);
    const { best, bound, inForce } = this.search;
    const faults = workloadFaults(problem, best);
    if (faults.length > 0)
      throw new Error(`The planner made a plan that breaks rules: ${faults.slice(0, 3).join('; ')}`);
    return {
      inForce: standingIn(this.stated, inForce, bound),
      best: { ...standingIn(this.stated, best, bound), moved: movedWork(best, problem, names) },
      bound: { lateness: bound.lateness, by: bound.by },
      sureMinutes: bound.lateness * names.axis.slotMinutes,
      verdict: verdictOf(best.objective.lateness, bound.lateness),
      gapPercent: gapPercent(best.objective.lateness, bound.lateness),
    };
  }
}
