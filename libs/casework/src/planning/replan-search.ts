import { DomainError } from '@archwright/kernel';
import {
  replanChain,
  slotsKeepingRest,
  type ChainProblem,
  type CurrentVisit,
  type ReplanAim,
} from '@archwright/planner';
import {
  fromChainPlan,
  wayMs,
  type CasePlan,
  type CasePlanLabStep,
  type CasePlanVisit,
  type FixedStep,
  type PlanNames,
  type PlanRequest,
} from '@archwright/protocol';
import type { FoundPlan } from './search.js';
import { Translation } from './translation.js';

/** Where a visit is booked now, with everything it takes. */
export interface BookedVisit {
  readonly stage: string;
  readonly startMs: number;
  readonly endMs: number;
  readonly clinicId: string;
  readonly clinicianId: string;
  /** Empty at the patient's home. */
  readonly chairId: string;
  readonly homeTravelMinutes: number | null;
  readonly assistantId: string | null;
  readonly kitIds: readonly string[];
}

/** A start that a person has chosen for one visit. */
export interface ChosenStart {
  readonly stage: string;
  readonly startMs: number;
  /** Null: whoever is free, the present clinician first. */
  readonly clinicianId: string | null;
}

export interface ReplanSearch {
  /** No visit to come is fixed in it. */
  readonly request: PlanRequest;
  readonly booked: readonly BookedVisit[];
  /** Laboratory work to come as it is planned now. */
  readonly plannedSteps: readonly (FixedStep & { readonly afterStage: string; readonly beforeStage: string })[];
  readonly chosen: ChosenStart | null;
}

/** A new plan, and what it costs. */
export interface Replan {
  readonly found: FoundPlan;
  readonly movedVisits: number;
  /** Days are counted from a day of the search's own: they compare plans of one search only. */
  readonly deliveryDay: number;
  readonly againstWishes: number;
}

/**
 * The best plan for an aim, then the least moved laboratory work: all of it stays if that costs nothing that the aim
 * counts, else what lies between visits that stay. Null when no plan is left.
 *
 * @param translation kept by those who ask about variations of one case
 */
export function findReplan(
  search: ReplanSearch,
  aim: ReplanAim,
  translation = new Translation(search.request),
): Replan | null {
  const free = replanWith(search, aim, [], translation);
  if (free === null) return null;
  const moved = (code: string): boolean => free.found.plan.visits.some((each) => each.stage === code && !each.isKept);
  const between = search.plannedSteps.filter((step) => !moved(step.afterStage) && !moved(step.beforeStage));
  for (const kept of [search.plannedSteps, between]) {
    const found = kept.length === 0 ? null : replanWith(search, aim, kept, translation);
    if (found !== null && isAsGood(found, free, aim)) return found;
  }
  return free;
}

/** Laboratory work that stays is worth a later delivery when few moves are asked for, and nothing else. */
function isAsGood(one: Replan, other: Replan, aim: ReplanAim): boolean {
  if (one.movedVisits !== other.movedVisits) return false;
  return aim === 'fewest-moves' || (one.deliveryDay === other.deliveryDay && one.againstWishes === other.againstWishes);
}

/** A search that can never have a plan has none. */
function replanWith(
  search: ReplanSearch,
  aim: ReplanAim,
  kept: readonly FixedStep[],
  translation: Translation,
): Replan | null {
  try {
    return searched(search, aim, kept, translation);
  } catch (error) {
    if (error instanceof DomainError) return null;
    throw error;
  }
}

function searched(
  { request, booked, chosen, plannedSteps }: ReplanSearch,
  aim: ReplanAim,
  kept: readonly FixedStep[],
  translation: Translation,
): Replan | null {
  const { problem, names } = translation.of({ ...request, fixedSteps: [...request.fixedSteps, ...kept] });
  const current = currentOf(problem, names, booked);
  const wanted = chosen === null ? problem : withChosenStart(problem, names, chosen);
  const [best] = replanChain(withPresentFirst(wanted, booked), current, aim, 1, translation.cache);
  if (best === undefined) return null;
  const plan = fromChainPlan({ ...best, reasons: [] }, names);
  return {
    found: {
      plan: withKept(plan, booked, plannedSteps),
      objective: { vector: best.vector, ties: best.ties },
    },
    movedVisits: best.movedVisits,
    deliveryDay: best.vector.deliveryDay,
    againstWishes: best.vector.wishesBroken,
  };
}

/** A start of one visit, and who would be there. */
export interface KeepingStart {
  readonly startMs: number;
  readonly clinicianId: string;
  readonly clinicId: string;
}

/** Other starts of one visit that leave all other booked visits where they are. */
export function startsKeepingRest(
  { request, booked }: Pick<ReplanSearch, 'request' | 'booked'>,
  stage: string,
  most: number,
  translation = new Translation(request),
): KeepingStart[] {
  const { problem, names } = translation.of(request);
  const visit = problem.visits.findIndex(({ key }) => key === stage);
  if (visit < 0) return [];
  return slotsKeepingRest(problem, currentOf(problem, names, booked), visit, most, translation.cache).map(
    ({ startSlot, clinic, clinician }) => ({
      startMs: names.axis.msOf(startSlot) + wayTo(stage, names),
      clinicId: clinic,
      clinicianId: clinician,
    }),
  );
}

/** How much earlier than the visit its block begins: the way to a patient at home. */
function wayTo(stage: string, { remaining }: PlanNames): number {
  const visit = remaining.visits.find((each) => each.stage.code === stage);
  return visit === undefined ? 0 : wayMs(visit);
}

/** Where each visit of the problem is booked now; null for one that is not. */
export function currentOf(
  problem: ChainProblem,
  names: PlanNames,
  booked: readonly BookedVisit[],
): (CurrentVisit | null)[] {
  return problem.visits.map(({ key }) => {
    const now = booked.find(({ stage }) => stage === key);
    return now === undefined
      ? null
      : { startSlot: names.axis.slotUntil(now.startMs - wayTo(key, names)), clinic: now.clinicId };
  });
}

function withChosenStart(
  problem: ChainProblem,
  names: PlanNames,
  { stage, startMs, clinicianId }: ChosenStart,
): ChainProblem {
  const slot = names.axis.slotUntil(startMs - wayTo(stage, names));
  const only = (bits: Uint32Array): Uint32Array =>
    bits.map((word, index) => (slot >= 0 && index === slot >> 5 ? word & (1 << (slot & 31)) : 0));
  return {
    ...problem,
    visits: problem.visits.map((visit) =>
      visit.key !== stage
        ? visit
        : {
            ...visit,
            options: visit.options.map((option) => ({
              ...option,
              allowed: only(option.allowed),
              clinicians:
                clinicianId === null
                  ? option.clinicians
                  : option.clinicians
                      .filter(({ key }) => key === clinicianId)
                      .map((clinician) => ({ ...clinician, refused: false })),
            })),
          },
    ),
  };
}

/** Puts what a visit has now before its equals, so that a visit that stays keeps its chair and people. */
export function withPresentFirst(problem: ChainProblem, booked: readonly BookedVisit[]): ChainProblem {
  return {
    ...problem,
    visits: problem.visits.map((visit) => {
      const now = booked.find(({ stage }) => stage === visit.key);
      if (now === undefined) return visit;
      const present = new Set([now.clinicianId, now.chairId, now.assistantId, ...now.kitIds]);
      const first = <Item extends { readonly key: string }>(items: readonly Item[]): Item[] => [
        ...items.filter(({ key }) => present.has(key)),
        ...items.filter(({ key }) => !present.has(key)),
      ];
      return {
        ...visit,
        options: visit.options.map((option) => ({
          ...option,
          clinicians: first(option.clinicians),
          chairs: first(option.chairs),
          assistants: option.assistants === null ? null : first(option.assistants),
          kits: option.kits.map((kit) => ({ ...kit, units: first(kit.units) })),
        })),
      };
    }),
  };
}

/** Marks what stays exactly as it is booked. */
export function withKept(
  plan: CasePlan,
  booked: readonly BookedVisit[],
  plannedSteps: ReplanSearch['plannedSteps'],
): CasePlan {
  return {
    ...plan,
    visits: plan.visits.map((visit) => ({
      ...visit,
      isKept: visit.isKept || booked.some((now) => isSameVisit(visit, now)),
    })),
    labSteps: plan.labSteps.map((step) => ({
      ...step,
      isKept: step.isKept || plannedSteps.some((now) => isSameStep(step, now)),
    })),
  };
}

const isSameVisit = (visit: CasePlanVisit, now: BookedVisit): boolean =>
  visit.stage === now.stage &&
  visit.startMs === now.startMs &&
  visit.endMs === now.endMs &&
  visit.clinicId === now.clinicId &&
  visit.clinicianId === now.clinicianId &&
  visit.chairId === now.chairId &&
  visit.homeTravelMinutes === now.homeTravelMinutes;

const isSameStep = (step: CasePlanLabStep, now: FixedStep): boolean =>
  step.code === now.code &&
  step.batchId === null &&
  step.startMs === now.startMs &&
  step.endMs === now.endMs &&
  step.placeId === now.placeId;
