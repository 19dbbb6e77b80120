import { DomainError } from '@archwright/kernel';
import { pullForward } from '@archwright/planner';
import { fromChainPlan, type CasePlan } from '@archwright/protocol';
import { besideOthers, toHeldTime } from '../planning/joint-problem.js';
import { currentOf, type ReplanSearch } from '../planning/replan-search.js';
import type { ResourceTimes } from '../planning/snapshot-changes.js';
import { Translation } from '../planning/translation.js';

/** Time of one person in one clinic that has become free. */
export interface FreedInterval {
  readonly clinicId: string;
  readonly clinicianId: string;
  readonly startMs: number;
  readonly endMs: number;
}

/** Which cases could use freed time, all over the same weeks. */
export interface TakersSearch {
  readonly freed: FreedInterval;
  readonly cases: readonly ({ readonly caseId: string } & Pick<ReplanSearch, 'request' | 'booked'>)[];
  /** What cases hold of the practice, those asked about and all others. */
  readonly held: ReadonlyMap<string, ResourceTimes>;
}

/** What a case could make of the time. */
export interface TakersPlan {
  readonly caseId: string;
  readonly stage: string;
  readonly plan: CasePlan;
  readonly movedVisits: number;
}

/** The best plan of every case that can use the time, while no other case moves. */
export function searchTakers({ freed, cases, held }: TakersSearch): TakersPlan[] {
  const [first] = cases;
  if (first === undefined) return [];
  const translation = new Translation(first.request);
  return cases.flatMap((each) => {
    try {
      return planWith(each, freed, held, translation);
    } catch (error) {
      if (error instanceof DomainError) return [];
      throw error;
    }
  });
}

function planWith(
  { caseId, request, booked }: TakersSearch['cases'][number],
  { clinicId, clinicianId, startMs, endMs }: FreedInterval,
  held: TakersSearch['held'],
  translation: Translation,
): TakersPlan[] {
  const { problem, names } = translation.of(request);
  const { axis } = names;
  const heldSlots = new Map([...held].map(([id, times]) => [id, toHeldTime(times, axis)]));
  const found = pullForward(
    besideOthers(problem, caseId, heldSlots, translation.cache),
    currentOf(problem, names, booked),
    {
      clinic: clinicId,
      clinician: clinicianId,
      startSlot: axis.slotFrom(startMs),
      endSlot: axis.slotUntil(endMs),
    },
    translation.cache,
  );
  const stage = found === null ? undefined : problem.visits[found.visit]?.key;
  if (found === null || stage === undefined) return [];
  const plan = fromChainPlan({ ...found.plan, reasons: [] }, names);
  return [{ caseId, stage, plan, movedVisits: found.plan.movedVisits }];
}
