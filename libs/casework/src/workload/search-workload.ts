import type { ThreadCrew } from '@archwright/jobs';
import {
  bestFind,
  type LevelObjective,
  type StreamFind,
  type Verdict,
  type WorkloadAim,
  type WorkloadBound,
  type WorkloadObjective,
} from '@archwright/planner';
import type { MovedWork, WorkOutlook, WorkloadRequest } from '@archwright/protocol';
import type { Concluded, MembersShare, MembersState } from './workload-member.js';

/** A coordinator who watches wants to see it move, and the database not more than that. */
export const REPORT_EVERY_MS = 400;

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
  readonly objective: WorkloadObjective | LevelObjective;
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

/**
 * Searches for as long as the question says. What is found is a function of request, aim, seed, streams and epochs: how
 * many threads there are changes the time and nothing else.
 *
 * @param crew of threads that serve the tasks of a {@link WorkloadMember}; no more than there are streams
 */
export async function searchWorkload(
  crew: ThreadCrew,
  question: WorkloadQuestion,
  { signal, report }: { readonly signal: AbortSignal; readonly report: (progress: WorkloadProgress) => void },
): Promise<WorkloadFound> {
  const { aim, seed, streams, until } = question;
  const numbers = Array.from({ length: streams }, (_, number) => number);
  const shareOf = (member: number): MembersShare => ({
    question,
    own: numbers.filter((number) => number % crew.size === member),
  });
  // The tasks answer with nothing else than is said here.
  let [stands] = (await crew.all('openWorkload', shareOf, { signal })) as [WorkloadObjective];
  const startedMs = performance.now();
  let reportedMs = startedMs;
  let last: StreamFind | null = null;
  let [epochs, isProved] = [0, false];
  const isOver = (): boolean =>
    'epochs' in until ? epochs >= until.epochs : performance.now() - startedMs >= until.milliseconds;
  while (!isProved && !isOver()) {
    const found: StreamFind | null = last;
    const states = (await crew.all('advanceWorkload', () => found, { signal })) as MembersState[];
    last = bestFind(
      states.map(({ find }) => find),
      aim,
    );
    [{ epochs, isProved } = { epochs, isProved }] = states;
    stands = last?.objective ?? stands;
    if (performance.now() - reportedMs < REPORT_EVERY_MS) continue;
    reportedMs = performance.now();
    report({ epochs, objective: stands });
  }
  const concluded = (await crew.first('concludeWorkload', last, { signal })) as Concluded;
  return { ...concluded, seed, streams, epochs };
}
