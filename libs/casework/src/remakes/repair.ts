import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { loadReplanBasis, type ReplanBasis } from '../planning/replan-basis.js';
import { findReplan, type BookedVisit } from '../planning/replan-search.js';
import type { FoundPlan } from '../planning/search.js';
import { movableVisits, type MovableVisit } from './movable-visits.js';
import { timesOf, withFreed, withTaken } from './snapshot-changes.js';

/** Other cases whose visit is tried in turn, so that the answer comes within seconds. Project default. */
const MOST_TRIED = 12;
const WEEK_MS = 7 * 86_400_000;

/** One case's part of a repair. */
export interface RepairPart {
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

export type RepairResult = { readonly repair: Repair } | { readonly reason: string };

/**
 * The repair with the fewest moved visits: within the case alone when it has a plan there, which is exact; otherwise one
 * visit of one other case makes room and that case is planned anew.
 */
export async function findRepair(
  tx: EntityManager,
  actor: Actor,
  basis: ReplanBasis,
  now: Date,
): Promise<RepairResult> {
  const alone = findReplan({ ...basis.search, chosen: null });
  if (alone !== null) {
    const movedVisits = movedIn(alone, basis.search.booked);
    return { repair: { parts: [{ basis, found: alone, movedVisits }], movedVisits, leastMovedVisits: movedVisits } };
  }
  return findRepairWithOther(tx, actor, basis, now);
}

/** Booked visits that get another start or clinic. */
export function movedIn({ plan }: FoundPlan, booked: readonly BookedVisit[]): number {
  return booked.filter((now) => {
    const visit = plan.visits.find(({ stage }) => stage === now.stage);
    return visit !== undefined && (visit.startMs !== now.startMs || visit.clinicId !== now.clinicId);
  }).length;
}

async function findRepairWithOther(
  tx: EntityManager,
  actor: Actor,
  basis: ReplanBasis,
  now: Date,
): Promise<RepairResult> {
  const { request, booked } = basis.search;
  const untilMs = request.nowMs + request.horizonWeeks * WEEK_MS;
  const scope = { caseId: basis.treatmentCase.id, clinicIds: request.wishes.clinicIds, untilMs };
  const visits = await movableVisits(tx, scope, now);
  // With every such visit out of the way there is no plan: then one alone can't make room either.
  const roomiest = planFreed(basis, visits);
  if (roomiest === null) return { reason: nothingHelps(visits.length) };
  const leastMovedVisits = movedIn(roomiest, booked) + 1;
  const tried = inTheWayFirst(visits, roomiest).slice(0, MOST_TRIED);
  let best: Repair | null = null;
  for (const visit of tried) {
    const repair = await repairWith(tx, actor, basis, visit, now);
    if (repair !== null && repair.movedVisits < (best?.movedVisits ?? Infinity)) best = { ...repair, leastMovedVisits };
    if (best?.movedVisits === leastMovedVisits) break;
  }
  return best === null ? { reason: noOneCase(tried.length, visits.length) } : { repair: best };
}

function planFreed({ search }: ReplanBasis, visits: readonly MovableVisit[]): FoundPlan | null {
  const practice = visits.reduce((free, { times }) => withFreed(free, times), search.request.practice);
  return findReplan({ ...search, request: { ...search.request, practice }, chosen: null });
}

/** Visits whose time the plan with all the room would use come first. */
function inTheWayFirst(visits: readonly MovableVisit[], { plan }: FoundPlan): MovableVisit[] {
  const wanted = timesOf(plan);
  const isInTheWay = ({ times }: MovableVisit): boolean =>
    [...times].some(([id, own]) =>
      (wanted.get(id) ?? []).some((need) => own.some((has) => need.startMs < has.endMs && has.startMs < need.endMs)),
    );
  return [...visits.filter(isInTheWay), ...visits.filter((visit) => !isInTheWay(visit))];
}

async function repairWith(
  tx: EntityManager,
  actor: Actor,
  basis: ReplanBasis,
  visit: MovableVisit,
  now: Date,
): Promise<Omit<Repair, 'leastMovedVisits'> | null> {
  const found = planFreed(basis, [visit]);
  if (found === null) return null;
  const other = await loadReplanBasis(tx, actor, visit.caseId, visit.stage, now);
  const { request } = other.search;
  const newTimes = timesOf({
    visits: found.plan.visits.filter(({ isKept }) => !isKept),
    labSteps: found.plan.labSteps.filter(({ isKept }) => !isKept),
  });
  const practice = withTaken(request.practice, newTimes);
  const moved = findReplan({ ...other.search, request: { ...request, practice }, chosen: null });
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
