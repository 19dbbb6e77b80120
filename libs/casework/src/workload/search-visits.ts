import type { ThreadCrew } from '@archwright/jobs';
import { compareLevels, type WorkloadAim } from '@archwright/planner';
import { REPORT_EVERY_MS, type WorkloadProgress, type WorkloadQuestion } from './search-workload.js';
import type { VisitsConcluded, VisitsShare, VisitsState } from './visits-member.js';
import type { VisitsQuestion } from './visits-question.js';

/** One search, and what makes it the same again. */
export interface VisitsSearch extends Pick<WorkloadQuestion, 'seed' | 'streams' | 'until'> {
  readonly question: VisitsQuestion;
  readonly aim: WorkloadAim;
}

export interface VisitsFound extends VisitsConcluded {
  readonly seed: number;
  readonly streams: number;
  /** Rounds of each stream. */
  readonly epochs: number;
}

/**
 * Chooses free visits again for as long as the search says. What is found is a function of question, aim, seed, streams
 * and rounds: how many threads there are changes the time and nothing else.
 *
 * @param crew of threads that serve the tasks of a {@link VisitsMember}; no more than there are streams
 */
export async function searchVisits(
  crew: ThreadCrew,
  { question, aim, seed, streams, until }: VisitsSearch,
  { signal, report }: { readonly signal: AbortSignal; readonly report: (progress: WorkloadProgress) => void },
): Promise<VisitsFound> {
  const numbers = Array.from({ length: streams }, (_, number) => number);
  const shareOf = (member: number): VisitsShare => ({
    ...{ question, aim, seed },
    own: numbers.filter((number) => number % crew.size === member),
  });
  // The tasks answer with nothing else than is said here.
  let states = (await crew.all('openVisits', shareOf, { signal })) as VisitsState[];
  const startedMs = performance.now();
  let reportedMs = startedMs;
  let epochs = 0;
  const isOver = (): boolean =>
    'epochs' in until ? epochs >= until.epochs : performance.now() - startedMs >= until.milliseconds;
  while (!states.every(({ isDone }) => isDone) && !isOver()) {
    states = (await crew.all('advanceVisits', () => null, { signal })) as VisitsState[];
    epochs++;
    if (performance.now() - reportedMs < REPORT_EVERY_MS) continue;
    reportedMs = performance.now();
    report({ epochs, objective: bestOf(states, aim).objective });
  }
  const winner = states.indexOf(bestOf(states, aim));
  const concluded = (await crew.all('concludeVisits', (member) => member === winner, {
    signal,
  })) as (VisitsConcluded | null)[];
  const found = concluded[winner];
  if (found == null) throw new Error('the thread with the best plan answers with it');
  return { ...found, seed, streams, epochs };
}

/** Of equally good ones the first stream's. */
function bestOf(states: readonly VisitsState[], aim: WorkloadAim): VisitsState {
  return states.reduce((best, state) => {
    const order = compareLevels(state.objective, best.objective, aim);
    return order < 0 || (order === 0 && state.stream < best.stream) ? state : best;
  });
}
