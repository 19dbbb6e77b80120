import { undominated, type ReplanAim } from '@archwright/planner';
import type { ReplanBasis } from '../planning/replan-basis.js';
import type { Replan, ReplanSearch } from '../planning/replan-search.js';
import type { FoundPlan } from '../planning/search.js';
import type { MovableVisit } from './movable-visits.js';
import { timesOf, withFreed, withTaken } from '../planning/snapshot-changes.js';

/** Visits of other cases that are tried in turn, so that the answer comes within a minute. Project default. */
const MOST_TRIED = 8;

/** What is booked around the case, read when it is needed: a search holds no lock. */
export interface Surroundings {
  /** Visits of other cases that could move, the earliest first. */
  movableVisits(): Promise<readonly MovableVisit[]>;
  basisOf(visit: MovableVisit): Promise<ReplanBasis>;
  /** The best plan for an aim; null when none is left. */
  replan(search: ReplanSearch, aim: ReplanAim): Promise<Replan | null>;
}

/** One case's part of a repair. */
interface RepairPart {
  readonly basis: ReplanBasis;
  readonly found: FoundPlan;
  readonly movedVisits: number;
}

/** A complete repair: the failing case first, then the one whose visit makes room, if any. */
export interface Repair {
  /** What it is the least in. */
  readonly aim: ReplanAim;
  readonly parts: readonly RepairPart[];
  readonly movedVisits: number;
  /** No plan that moves visits of the same cases moves fewer. */
  readonly leastMovedVisits: number;
}

type RepairResult = { readonly repairs: readonly Repair[] } | { readonly reason: string };

/**
 * Up to three repairs of which none is worse than another in every way, the one with the fewest moved visits first: within
 * the case alone when it has plans there, which are exact; otherwise one visit of one other case makes room and that case
 * is planned anew.
 */
export async function findRepairs(basis: ReplanBasis, around: Surroundings): Promise<RepairResult> {
  const search = { ...basis.search, chosen: null };
  const fewest = await around.replan(search, 'fewest-moves');
  if (fewest === null) return findRepairWithOther(basis, around);
  const ways: Way[] = [{ aim: 'fewest-moves', replan: fewest }];
  for (const aim of ['earliest', 'as-wished'] as const) {
    const replan = await around.replan(search, aim);
    if (replan !== null) ways.push({ aim, replan });
  }
  return {
    repairs: undominated(ways, costsOf).map(({ aim, replan: { found, movedVisits } }) => ({
      aim,
      parts: [{ basis, found, movedVisits }],
      movedVisits,
      leastMovedVisits: fewest.movedVisits,
    })),
  };
}

interface Way {
  readonly aim: ReplanAim;
  readonly replan: Replan;
}

const costsOf = ({ replan }: Way): number[] => [replan.movedVisits, replan.deliveryDay, replan.againstWishes];

async function findRepairWithOther(basis: ReplanBasis, around: Surroundings): Promise<RepairResult> {
  const visits = await around.movableVisits();
  // With every such visit out of the way there is no plan: then one alone can't make room either.
  const roomiest = await planFreed(basis, around, visits);
  if (roomiest === null) return { reason: nothingHelps(visits.length) };
  const leastMovedVisits = roomiest.movedVisits + 1;
  const isInTheWay = inTheWayOf(roomiest.found);
  const ordered = [...visits.filter(isInTheWay), ...visits.filter((visit) => !isInTheWay(visit))].slice(0, MOST_TRIED);
  let best: Repair | null = null;
  for (const visit of ordered) {
    // Visits that are not in the way of that plan rarely make more room than those that are.
    if (best !== null && (best.movedVisits === leastMovedVisits || !isInTheWay(visit))) break;
    const repair = await repairWith(basis, around, visit);
    if (repair !== null && repair.movedVisits < (best?.movedVisits ?? Infinity)) best = { ...repair, leastMovedVisits };
  }
  return best === null ? { reason: noOneCase(ordered.length, visits.length) } : { repairs: [best] };
}

function planFreed(
  { search }: ReplanBasis,
  around: Surroundings,
  visits: readonly MovableVisit[],
): Promise<Replan | null> {
  const practice = visits.reduce((free, { times }) => withFreed(free, times), search.request.practice);
  return around.replan({ ...search, request: { ...search.request, practice }, chosen: null }, 'fewest-moves');
}

/** Whether a visit holds time that the plan would use. */
function inTheWayOf({ plan }: FoundPlan): (visit: MovableVisit) => boolean {
  const wanted = timesOf(plan);
  return ({ times }) =>
    [...times].some(([id, own]) =>
      (wanted.get(id) ?? []).some((need) => own.some((has) => need.startMs < has.endMs && has.startMs < need.endMs)),
    );
}

async function repairWith(
  basis: ReplanBasis,
  around: Surroundings,
  visit: MovableVisit,
): Promise<Omit<Repair, 'leastMovedVisits'> | null> {
  const own = await planFreed(basis, around, [visit]);
  if (own === null) return null;
  const { plan } = own.found;
  const other = await around.basisOf(visit);
  const { request } = other.search;
  const newTimes = timesOf({
    visits: plan.visits.filter(({ isKept }) => !isKept),
    labSteps: plan.labSteps.filter(({ isKept }) => !isKept),
  });
  const practice = withTaken(request.practice, newTimes);
  const moved = await around.replan(
    { ...other.search, request: { ...request, practice }, chosen: null },
    'fewest-moves',
  );
  if (moved === null) return null;
  const parts = [
    { basis, found: own.found, movedVisits: own.movedVisits },
    { basis: other, found: moved.found, movedVisits: moved.movedVisits },
  ];
  return { aim: 'fewest-moves', parts, movedVisits: parts.reduce((sum, part) => sum + part.movedVisits, 0) };
}

function nothingHelps(visits: number): string {
  const others = visits === 0 ? 'no other case’s visit could move' : 'moving other cases’ visits would not make one';
  return `No plan is left within the waits that the treatment allows, and ${others}. Allow a longer wait or another clinician, and ask again.`;
}

function noOneCase(tried: number, visits: number): string {
  const which = tried < visits ? `the ${String(tried)} likeliest of ${String(visits)} visits` : 'every visit';
  return `No plan is left within the waits, and moving one visit of one other case does not make room (tried ${which}). Move visits by hand, or allow a longer wait.`;
}
