import { and, andInto, hasBit } from './bits.js';
import { BitsPool } from './bits-pool.js';
import type { ChainCache } from './cache.js';
import type { ChainProblem, ChainResource, SlotBits } from './model.js';
import { groupPhases, type PhaseGroup } from './phases.js';
import { bothPieces, type Piece } from './piece.js';
import {
  allowedBy,
  asPiece,
  kitRelation,
  ownWorkRelation,
  phaseRelation,
  waitRelation,
  type Relation,
} from './relations.js';
import { anyFree, roomFor, startsOf } from './room.js';

/** A visit in one clinic with one clinician. */
export interface State {
  readonly option: number;
  readonly clinic: string;
  readonly clinician: string;
  /** Starts for which the clinician has time; what else the option asks for is left aside. */
  readonly time: SlotBits;
  readonly placementCost: Uint8Array | null;
}

/** Starts of an option, clinicians apart from everything else. */
interface OptionRoom {
  /** Everything but the clinician allows them. */
  readonly common: SlotBits;
  /** Some accepted clinician has time. */
  readonly anybody: SlotBits;
}

/** Two visits, `early` before `late` in time. */
export interface Joint {
  readonly early: number;
  readonly late: number;
  /** Every way to join the two visits in given clinics; at least one has to hold. */
  readonly pieces: (earlyOption: number, lateOption: number) => readonly Piece[];
}

/** A link of the tree; `child` is the end away from delivery. */
export interface Link extends Joint {
  readonly child: number;
  readonly parent: number;
  readonly relations: readonly Relation[];
}

export interface PreparedChain {
  readonly problem: ChainProblem;
  /** Accepted states per visit. */
  readonly states: readonly (readonly State[])[];
  /** By visit and option; absent where the option is refused. */
  readonly rooms: readonly (readonly (OptionRoom | undefined)[])[];
  /** Links in an order in which every visit's other links come before the one towards delivery. */
  readonly links: readonly Link[];
  /** Relations on one visit; already in `rooms`. */
  readonly unary: readonly Relation[];
  /** Relations between visits that are no link, or among more than two. */
  readonly others: readonly Relation[];
  /** What {@link others} say of two visits as pieces, at the same index; `null` where that is not all they say, or too dear. */
  readonly crossings: readonly (Joint | null)[];
  /** Phases whose work may meet, each in exactly one group. */
  readonly groups: readonly PhaseGroup[];
  readonly pool: BitsPool;
}

function isLink(problem: ChainProblem, a: number, b: number): boolean {
  return problem.visits[b]!.follows === a || problem.visits[a]!.follows === b;
}

/** Composition of the least bounds from one visit to the next ones: nothing can be nearer. */
function nearest(problem: ChainProblem, from: number, relations: readonly Relation[]): Int32Array[] {
  const { slotCount, visits } = problem;
  const reached: Int32Array[] = [Int32Array.from({ length: slotCount }, (_, slot) => slot)];
  for (let visit = from; visit + 1 < visits.length; visit++) {
    const least = new Int32Array(slotCount).fill(0);
    for (const relation of relations) {
      if (relation.visits.length !== 2 || relation.visits[0] !== visit || relation.visits[1] !== visit + 1) continue;
      const own = new Int32Array(slotCount).fill(slotCount);
      visits[visit]!.options.forEach((_, early) => {
        visits[visit + 1]!.options.forEach((__, late) => {
          for (const { pieces } of relation.alternatives([early, late])) {
            for (let slot = 0; slot < slotCount; slot++) own[slot] = Math.min(own[slot]!, pieces[0]!.piece.lo[slot]!);
          }
        });
      });
      for (let slot = 0; slot < slotCount; slot++) least[slot] = Math.max(least[slot]!, own[slot]!);
    }
    const before = reached[visit - from]!;
    reached.push(before.map((slot) => (slot >= slotCount ? slotCount : least[slot]!)));
  }
  return reached;
}

/** Visits that may want one kit unit before it is ready again, as relations. */
function kitRelations(problem: ChainProblem, relations: readonly Relation[], cache: ChainCache): Relation[] {
  const { visits, slotCount } = problem;
  const needs = visits.map(({ options }) =>
    options.flatMap(({ kits, lengthSlots }) => kits.map((kit) => ({ kit, lengthSlots }))),
  );
  const groupOf = visits.map((_, index) => index);
  let any = false;
  for (let first = 0; first < visits.length; first++) {
    if (needs[first]!.every(({ kit }) => kit.reprocessingSlots === 0)) continue;
    let near: Int32Array[] | null = null;
    for (let second = first + 1; second < visits.length; second++) {
      const keys = new Set(needs[second]!.flatMap(({ kit }) => kit.units.map(({ key }) => key)));
      const shared = needs[first]!.filter(({ kit }) => kit.units.some(({ key }) => keys.has(key)));
      if (shared.length === 0) continue;
      near ??= nearest(problem, first, relations);
      const away = Math.max(...shared.map(({ kit, lengthSlots }) => kit.reprocessingSlots + lengthSlots));
      if (near[second - first]!.every((slot, start) => slot >= Math.min(slotCount, start + away))) continue;
      any = true;
      const [keep, drop] = [groupOf[first]!, groupOf[second]!];
      for (let index = 0; index < groupOf.length; index++) if (groupOf[index] === drop) groupOf[index] = keep;
    }
  }
  if (!any) return [];
  return [...new Set(groupOf)]
    .map((group) => groupOf.flatMap((of, index) => (of === group ? [index] : [])))
    .filter((members) => members.length > 1)
    .map((members) => kitRelation(problem, members, startsOf(cache)));
}

function allRelations(problem: ChainProblem, cache: ChainCache): Relation[] {
  const relations: Relation[] = [];
  const waits = new Set<string>();
  for (let visit = 1; visit < problem.visits.length; visit++) waits.add(`${String(visit - 1)}:${String(visit)}`);
  for (const { from, to } of problem.lags) waits.add(`${String(from)}:${String(to)}`);
  problem.visits.forEach(({ follows }, visit) => {
    if (follows !== null) waits.add(`${String(follows)}:${String(visit)}`);
  });
  for (const pair of waits) {
    const [from, to] = pair.split(':').map(Number);
    relations.push(waitRelation(problem, from!, to!, cache));
  }
  problem.phases.forEach((_, phase) => relations.push(phaseRelation(problem, phase, cache)));
  return [...relations, ...kitRelations(problem, relations, cache)];
}

function makeJoint(
  problem: ChainProblem,
  early: number,
  late: number,
  relations: readonly Relation[],
  cache: ChainCache,
): Joint {
  const { slotCount } = problem;
  const both = (left: Piece, right: Piece): Piece =>
    cache.get(`both:${String(cache.id(left))}:${String(cache.id(right))}`, () => bothPieces(left, right));
  const known = new Map<number, readonly Piece[]>();
  const pieces = (earlyOption: number, lateOption: number): readonly Piece[] => {
    const key = earlyOption * problem.visits[late]!.options.length + lateOption;
    let found = known.get(key);
    if (found === undefined) {
      let joined: Piece[] = [];
      relations.forEach((relation, index) => {
        const ways = relation
          .alternatives([earlyOption, lateOption])
          .map((way) => asPiece(way, early, late, slotCount));
        joined = index === 0 ? ways : joined.flatMap((left) => ways.map((right) => both(left, right)));
      });
      found = joined;
      known.set(key, found);
    }
    return found;
  };
  return { early, late, pieces };
}

function makeLink(
  problem: ChainProblem,
  early: number,
  late: number,
  relations: readonly Relation[],
  cache: ChainCache,
): Link {
  const child = late <= problem.deliveryVisit ? early : late;
  const own = relations.filter(({ visits }) => visits.length === 2 && visits[0] === early && visits[1] === late);
  const joint = makeJoint(problem, early, late, own, cache);
  return { ...joint, child, parent: child === early ? late : early, relations: own };
}

/** Start sets by state, and the links and relations between them. */
export function prepareChain(problem: ChainProblem, cache: ChainCache): PreparedChain {
  const { slotCount, visits, deliveryVisit } = problem;
  const relations = allRelations(problem, cache);
  const groups = groupPhases(problem.phases);
  const unary = relations.filter(({ visits: of }) => of.length === 1);
  const starts = startsOf(cache);
  const accepted = visits.map(({ options }) =>
    options.map(({ refused, clinicians }) => (refused ? [] : clinicians.filter((each) => !each.refused))),
  );
  const states = visits.map(({ options }, visit) =>
    options.flatMap(({ clinic, lengthSlots }, option) =>
      accepted[visit]![option]!.map(({ key, free, placementCost }): State => ({
        option,
        clinic,
        clinician: key,
        time: starts(free, lengthSlots),
        placementCost,
      })),
    ),
  );
  const rooms = visits.map(({ options }, visit) =>
    options.map((option, index): OptionRoom | undefined => {
      const clinicians = accepted[visit]![index]!;
      if (clinicians.length === 0) return undefined;
      const common = and(roomFor(option, slotCount, cache), option.allowed);
      for (const relation of unary) {
        if (relation.visits[0] === visit) andInto(common, allowedBy(relation.alternatives([index]), slotCount));
      }
      return { common, anybody: anyFree(clinicians, option.lengthSlots, slotCount, cache) };
    }),
  );
  const links: Link[] = [];
  for (let visit = 1; visit <= deliveryVisit; visit++)
    links.push(makeLink(problem, visit - 1, visit, relations, cache));
  for (let visit = visits.length - 1; visit > deliveryVisit; visit--) {
    links.push(makeLink(problem, visits[visit]!.follows!, visit, relations, cache));
  }
  const others = relations.filter(
    ({ visits: of }) => of.length > 2 || (of.length === 2 && !isLink(problem, of[0]!, of[1]!)),
  );
  for (const group of groups) {
    const competing = ownWorkRelation(problem, group, cache);
    if (competing !== null) others.push(competing);
  }
  const crossings = others.map((relation) => {
    const [early, late] = relation.visits;
    const isPair = relation.visits.length === 2 && relation.keeps === null;
    return isPair ? makeJoint(problem, early!, late!, [relation], cache) : null;
  });
  const pool = cache.get(`pool:${String(slotCount)}`, () => new BitsPool(slotCount));
  return { problem, states, rooms, links, unary, others, crossings, groups, pool };
}

/** First resource of a list that is free for `length` slots from `start` on. */
export function firstFree(
  resources: readonly ChainResource[],
  start: number,
  length: number,
  cache: ChainCache,
): ChainResource | undefined {
  const starts = startsOf(cache);
  return resources.find(({ free }) => hasBit(starts(free, length), start));
}
