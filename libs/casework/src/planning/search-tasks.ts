import type { WhyNot } from '@archwright/contracts';
import { DomainError } from '@archwright/kernel';
import type { ReplanAim, StreamFind, WorkloadObjective } from '@archwright/planner';
import type { PlanRequest } from '@archwright/protocol';
import { searchRepair, type RepairSearch, type RepairsFound } from '../disturbances/search-repair.js';
import { searchTakers, type TakersPlan, type TakersSearch } from '../freed-time/search-takers.js';
import type { Refusal } from './refusal-words.js';
import { findReplan, startsKeepingRest, type KeepingStart, type Replan, type ReplanSearch } from './replan-search.js';
import { findOffers, type FoundPlan } from './search.js';
import { WorkloadMember, type Concluded, type MembersShare, type MembersState } from '../workload/workload-member.js';
import { VisitsMember, type VisitsConcluded, type VisitsShare, type VisitsState } from '../workload/visits-member.js';
import { Translation } from './translation.js';
import { explainWhyNot, type WaysOut } from './why-not.js';

/** Offers for a request, and what proves that there can never be any. */
export interface OffersFound {
  readonly found: readonly FoundPlan[];
  readonly refusal: Refusal | null;
}

/** The last question's translation: searches of the same minutes have most of their calendars and bookings in common. */
class Memory {
  private last: Translation | null = null;

  of(request: PlanRequest): Translation {
    if (this.last?.fits(request) !== true) this.last = new Translation(request);
    return this.last;
  }
}

/** The search of many cases that this thread takes part in. */
class OpenWorkload {
  private opened: WorkloadMember | null = null;

  open(share: MembersShare): WorkloadObjective {
    this.opened = new WorkloadMember(share);
    return this.opened.objective;
  }

  get member(): WorkloadMember {
    if (this.opened === null) throw new Error('No search of many cases is open on this thread.');
    return this.opened;
  }
}

/** The search for visits of several cases that this thread takes part in. */
class OpenVisits {
  private opened: VisitsMember | null = null;

  open(share: VisitsShare): VisitsState {
    this.opened = new VisitsMember(share);
    return this.opened.state;
  }

  get member(): VisitsMember {
    if (this.opened === null) throw new Error('No search for visits is open on this thread.');
    return this.opened;
  }
}

function offersOrRefusal(request: PlanRequest, count: number, translation: Translation): OffersFound {
  try {
    return { found: findOffers(request, count, translation), refusal: null };
  } catch (error) {
    if (!(error instanceof DomainError)) throw error;
    const { code, message, details } = error;
    return { found: [], refusal: { code, message, details } };
  }
}

/** Every search of this lib, for one thread. Input and answers are plain values. */
export function searchTasks() {
  const memory = new Memory();
  const workload = new OpenWorkload();
  const visits = new OpenVisits();
  return {
    offers: ({ request, count }: { request: PlanRequest; count: number }): OffersFound =>
      offersOrRefusal(request, count, memory.of(request)),
    whyNot: ({ request, refusal, ways }: { request: PlanRequest; refusal: Refusal | null; ways: WaysOut }): WhyNot =>
      explainWhyNot(request, refusal, ways),
    replan: ({ search, aim }: { search: ReplanSearch; aim: ReplanAim }): Replan | null =>
      findReplan(search, aim, memory.of(search.request)),
    openWorkload: (share: MembersShare): WorkloadObjective => workload.open(share),
    advanceWorkload: (last: StreamFind | null): MembersState => workload.member.advance(last),
    concludeWorkload: (last: StreamFind | null): Concluded => workload.member.conclude(last),
    openVisits: (share: VisitsShare): VisitsState => visits.open(share),
    advanceVisits: (): VisitsState => visits.member.advance(),
    concludeVisits: (isWanted: boolean): VisitsConcluded | null => (isWanted ? visits.member.conclude() : null),
    startsKeepingRest: ({
      search,
      stage,
      most,
    }: {
      search: Pick<ReplanSearch, 'request' | 'booked'>;
      stage: string;
      most: number;
    }): KeepingStart[] => startsKeepingRest(search, stage, most, memory.of(search.request)),
    repair: (search: RepairSearch): RepairsFound => searchRepair(search),
    takers: (search: TakersSearch): TakersPlan[] => searchTakers(search),
  };
}

type SearchTasks = ReturnType<typeof searchTasks>;
export type SearchName = keyof SearchTasks;
export type SearchInput<Name extends SearchName> = Parameters<SearchTasks[Name]>[0];
export type SearchAnswer<Name extends SearchName> = ReturnType<SearchTasks[Name]>;
