import type { ReplanBasis } from '../planning/replan-basis.js';
import type { BookedVisit, ReplanSearch } from '../planning/replan-search.js';
import type { FoundPlan } from '../planning/search.js';
import type { MovableVisit } from './movable-visits.js';
import { timesOf, withFreed, withTaken } from './snapshot-changes.js';

/** Visits of other cases that are tried in turn, so that the answer comes within a minute. Project default. */
const MOST_TRIED = 8;

/** What is booked around the case, read when it is needed: a search holds no lock. */
export interface Surroundings {
  /** Visits of other cases that could move, the earliest first. */
  movableVisits(): Promise<readonly MovableVisit[]>;
  basisOf(visit: MovableVisit): Promise<ReplanBasis>;
  /** The plan that moves the fewest booked visits; null when none is left. */
  replan(search: ReplanSearch): Promise<FoundPlan | null>;
}

/** One case's part of a repair. */
interface RepairPart {
  readonly basis: ReplanBasis;
  readonly found: FoundPlan;
  readonly movedVisits: number;
}

/** A complete repair: the failing case first, then the one whose visit makes room, if any. */
export interface Repair {
  readonly parts: readonly RepairPart[];
  readonly movedVisits: number;
  /** No plan that moves visits of the same cases moves fewer. */
  readonly leastMovedVisits: number;
}

type RepairResult = { readonly repair: Repair } | { readonly reason: string };

/**
 * The repair with the fewest moved visits: within the case alone when it has a plan there, which is exact; otherwise one
 * visit of one other case makes room and that case is planned anew.
 */
export async function findRepair(basis: ReplanBasis, around: Surroundings): Promise<RepairResult> {
  const alone = await around.replan({ ...basis.search, chosen: null });
  if (alone === null) return findRepairWithOther(basis, around);
  const movedVisits = movedIn(alone, basis.search.booked);
  return { repair: { parts: [{ basis, found: alone, movedVisits }], movedVisits, leastMovedVisits: movedVisits } };
}

/** Booked visits that get another start or clinic. */
function movedIn({ plan }: FoundPlan, booked: readonly BookedVisit[]): number {
  return booked.filter((now) => {
    const visit = plan.visits.find(({ stage }) => stage === now.stage);
    return visit !== undefined && (visit.startMs !== now.startMs || visit.clinicId !== now.clinicId);
  }).length;
}

async function findRepairWithOther(basis: ReplanBasis, around: Surroundings): Promise<RepairResult> {
  const visits = await around.movableVisits();
  // With every such visit out of the way there is no plan: then one alone can't make room either.
  const roomiest = await planFreed(basis, around, visits);
  if (roomiest === null) return { reason: nothingHelps(visits.length) };
  const leastMovedVisits = movedIn(roomiest, basis.search.booked) + 1;
  const isInTheWay = inTheWayOf(roomiest);
  const ordered = [...visits.filter(isInTheWay), ...visits.filter((visit) => !isInTheWay(visit))].slice(0, MOST_TRIED);
  let best: Repair | null = null;
  for (const visit of ordered) {
    // Visits that are not in the way of that plan rarely make more room than those that are.
    if (best !== null && (best.movedVisits === leastMovedVisits || !isInTheWay(visit))) break;
    const repair = await repairWith(basis, around, visit);
    if (repair !== null && repair.movedVisits < (best?.movedVisits ?? Infinity)) best = { ...repair, leastMovedVisits };
  }
  return best === null ? { reason: noOneCase(ordered.length, visits.length) } : { repair: best };
}

function planFreed(
  { search }: ReplanBasis,
  around: Surroundings,
  visits: readonly MovableVisit[],
): Promise<FoundPlan | null> {
  const practice = visits.reduce((free, { times }) => withFreed(free, times), search.request.practice);
  return around.replan({ ...search, request: { ...search.request, practice }, chosen: null });
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
  const found = await planFreed(basis, around, [visit]);
  if (found === null) return null;
  const other = await around.basisOf(visit);
  const { request } = other.search;
  const newTimes = timesOf({
    visits: found.plan.visits.filter(({ isKept }) => !isKept),
    labSteps: found.plan.labSteps.filter(({ isKept }) => !isKept),
  });
  const practice = withTaken(request.practice, newTimes);
  const moved = await around.replan({ ...other.search, request: { ...request, practice }, chosen: null });
  if (moved === null) return null;
  const parts = [
    { basis, found, movedVisits: movedIn(found, basis.search.booked) },
    { basis: other, found: moved, movedVisits: movedIn(moved, other.search.booked) },
  ];
  return { parts, movedVisits: parts.reduce((sum, part) => sum + part.movedVisits, 0) };
}

function nothingHelps(visits: number): string {
  const others = visits === 0 ? 'no other case’s visit could move' : 'moving other cases’ visits would not make one';
  return `No plan is left within the waits that the treatment allows, and ${others}. Allow a longer wait or another clinician, and ask again.`;
}

function noOneCase(tried: number, visits: number): string {
  const which = tried < visits ? `the ${String(tried)} likeliest of ${String(visits)} visits` : 'every visit';
  return `No plan is left within the waits, and moving one visit of one other case does not make room (tried ${which}). Move visits by hand, or allow a longer wait.`;
}
