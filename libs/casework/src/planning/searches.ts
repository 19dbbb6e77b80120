import type { WhyNot } from '@archwright/contracts';
import { availableParallelism } from 'node:os';
import { ThreadCrew, ThreadPool, ThreadsClosedError, threadEntry, type TaskOptions } from '@archwright/jobs';
import type { ReplanAim } from '@archwright/planner';
import type { PlanRequest } from '@archwright/protocol';
import type { DataSource } from 'typeorm';
import type { RepairSearch, RepairsFound } from '../disturbances/search-repair.js';
import type { TakersPlan, TakersSearch } from '../freed-time/search-takers.js';
import type { Refusal } from './refusal-words.js';
import type { KeepingStart, Replan, ReplanSearch } from './replan-search.js';
import type { OffersFound, SearchAnswer, SearchInput, SearchName } from './search-tasks.js';
import {
  searchWorkload,
  type WorkloadFound,
  type WorkloadProgress,
  type WorkloadQuestion,
} from '../workload/search-workload.js';
import { searchVisits, type VisitsFound, type VisitsSearch } from '../workload/search-visits.js';
import type { WaysOut } from './why-not.js';

/** What a question takes that is searched for between two transactions. */
export interface PlanningMeans {
  readonly db: DataSource;
  readonly searches: Searches;
  /** Given when nobody waits for the answer any more; left out where somebody always does. */
  readonly signal?: AbortSignal;
}

/** A person on the telephone does not wait longer, and a queue would run the job again. Project default. */
const WITHIN_MS = 120_000;
const MOST_WAITING = 32;
const ENTRY = threadEntry('search-thread', import.meta.url);

/** Searches for plans, on threads of their own: each keeps one core busy for a good part of a second or longer. */
export class Searches {
  private readonly pool = new ThreadPool({ entry: ENTRY, mostWaiting: MOST_WAITING, withinMs: WITHIN_MS });
  private readonly crews = new Set<ThreadCrew>();
  private isClosed = false;

  /** Several different plans, the best for each question first. */
  offers(request: PlanRequest, count: number, signal?: AbortSignal): Promise<OffersFound> {
    return this.run('offers', { request, count }, { signal });
  }

  /** Why there are none, and what would help. */
  whyNot(request: PlanRequest, refusal: Refusal | null, ways: WaysOut, signal?: AbortSignal): Promise<WhyNot> {
    return this.run('whyNot', { request, refusal, ways }, { signal });
  }

  /** The best plan for an aim; null when none is left. */
  replan(search: ReplanSearch, aim: ReplanAim = 'fewest-moves'): Promise<Replan | null> {
    return this.run('replan', { search, aim });
  }

  /** Other starts of one visit that leave all other booked visits where they are. */
  startsKeepingRest(
    { request, booked }: Pick<ReplanSearch, 'request' | 'booked'>,
    stage: string,
    most: number,
  ): Promise<readonly KeepingStart[]> {
    return this.run('startsKeepingRest', { search: { request, booked }, stage, most });
  }

  /** Plans that repair several cases together. */
  repair(search: RepairSearch): Promise<RepairsFound> {
    return this.run('repair', search);
  }

  /** What cases could make of time that has become free. */
  takers(search: TakersSearch, signal?: AbortSignal): Promise<readonly TakersPlan[]> {
    return this.run('takers', search, { signal });
  }

  /**
   * Better plans for the work of many cases, of one kind, on threads that are its own: as many as there are cores, for as
   * long as it was asked to search. `onProgress` is told what is known so far.
   */
  workload(
    question: WorkloadQuestion,
    signal: AbortSignal,
    onProgress: (progress: WorkloadProgress) => void,
  ): Promise<WorkloadFound> {
    return this.withCrew('workload', question.streams, (crew) =>
      searchWorkload(crew, question, { signal, report: onProgress }),
    );
  }

  /** Free visits of several cases chosen again, likewise. */
  visits(
    search: VisitsSearch,
    signal: AbortSignal,
    onProgress: (progress: WorkloadProgress) => void,
  ): Promise<VisitsFound> {
    return this.withCrew('visits', search.streams, (crew) =>
      searchVisits(crew, search, { signal, report: onProgress }),
    );
  }

  /** Ends the threads; searches under way are refused. */
  async close(): Promise<void> {
    this.isClosed = true;
    await Promise.all([this.pool, ...this.crews].map((threads) => threads.close()));
  }

  private async withCrew<Found>(
    what: string,
    streams: number,
    work: (crew: ThreadCrew) => Promise<Found>,
  ): Promise<Found> {
    if (this.isClosed) throw new ThreadsClosedError(what);
    const crew = new ThreadCrew({ entry: ENTRY, size: Math.min(streams, availableParallelism()), withinMs: WITHIN_MS });
    this.crews.add(crew);
    try {
      return await work(crew);
    } finally {
      this.crews.delete(crew);
      await crew.close();
    }
  }

  private async run<Name extends SearchName>(
    name: Name,
    input: SearchInput<Name>,
    options: TaskOptions = {},
  ): Promise<SearchAnswer<Name>> {
    // The thread runs the task of this name.
    return (await this.pool.run(name, input, options)) as SearchAnswer<Name>;
  }
}
