import { delays } from './arcs.js';
import { and, hasBit } from './bits.js';
import type { ChainCache } from './cache.js';
import type { ChainProblem, LabAlternative, OpenBatch, SlotBits } from './model.js';
import { smallestSolution, type Net } from './net.js';
import type { OperationStarts } from './operation.js';

/** One operation of a group for chosen laboratories. */
export interface Node {
  readonly phase: number;
  readonly lab: number;
  readonly operation: number;
  readonly starts: OperationStarts;
}

/** Way in which one operation is done: on any free place, or in one named batch. */
export interface Mode {
  readonly batch: OpenBatch | null;
  readonly domain: SlotBits;
  readonly end: Int32Array;
  readonly firstHold: Int32Array;
  readonly lastHoldEnd: Int32Array;
}

/** Pairs of operations of one laboratory of which the first has surely given its place back when the second starts. */
export function ordered(lab: LabAlternative, cache: ChainCache): boolean[][] {
  const count = lab.operations.length;
  const before = Array.from({ length: count }, () => new Array<boolean>(count).fill(false));
  const later = Array.from({ length: count }, () => new Array<boolean>(count).fill(false));
  for (const arc of lab.arcs) {
    if (typeof arc.from !== 'number' || typeof arc.to !== 'number' || !delays(arc, cache)) continue;
    later[arc.from]![arc.to] = true;
    if (arc.anchor === 'end') before[arc.from]![arc.to] = true;
  }
  for (let via = 0; via < count; via++) {
    for (let from = 0; from < count; from++) {
      for (let to = 0; to < count; to++) {
        if (later[from]![via]! && later[via]![to]!) later[from]![to] = true;
      }
    }
  }
  // Ended before one that is not earlier than the target: then the place has been given back.
  const sure = before.map((row) => row.slice());
  for (let from = 0; from < count; from++) {
    for (let via = 0; via < count; via++) {
      if (!before[from]![via]!) continue;
      for (let to = 0; to < count; to++) if (later[via]![to]!) sure[from]![to] = true;
    }
  }
  return sure;
}

/** Starts of `second` from which its first hold begins at or after `freed`, as a lower bound table. */
function orderTable(first: Mode, second: Mode, slotCount: number): Int32Array {
  const lo = new Int32Array(slotCount);
  let start = 0;
  for (let slot = 0; slot < slotCount; slot++) {
    while (start < slotCount && second.firstHold[start]! < first.lastHoldEnd[slot]!) start++;
    lo[slot] = start;
  }
  return lo;
}

export interface Pair {
  readonly first: number;
  readonly second: number;
}

/** Places on which an operation may be put when the choice of the place matters. */
function placesFor(node: Node, mode: Mode): string[] {
  if (mode.batch !== null) return [mode.batch.place];
  return node.starts.byPlace.flatMap(({ place }) => (place === null ? [] : [place]));
}

/** Operations of a group in one net, with the pairs that may still want one place at a time. */
export interface OwnWork {
  /** Nodes: first the group's visits in rising order, then its operations. */
  readonly net: Net;
  readonly nodes: readonly Node[];
  readonly modes: readonly Mode[];
  /** Place on which an operation was put, where that was part of a choice. */
  readonly placeOf: ReadonlyMap<number, string>;
  readonly open: readonly Pair[];
}

function put(work: OwnWork, index: number, place: string): OwnWork {
  if (work.placeOf.has(index)) return work;
  const offset = work.net.domains.length - work.nodes.length;
  const placeOf = new Map([...work.placeOf, [index, place]]);
  if (work.modes[index]!.batch !== null) return { ...work, placeOf };
  const { starts } = work.nodes[index]!.starts.byPlace.find((entry) => entry.place === place)!;
  const domains = work.net.domains.map((bits, at) => (at === index + offset ? and(bits, starts) : bits));
  return { ...work, placeOf, net: { ...work.net, domains } };
}

/** Every way to keep one pair out of each other's way: one first, the other first, or each on a place of its own. */
export function settle<W extends OwnWork>(work: W, pair: Pair): W[] {
  const { first, second } = pair;
  const slotCount = work.modes[first]!.end.length;
  const offset = work.net.domains.length - work.nodes.length;
  const rest: W = { ...work, open: work.open.filter((other) => other !== pair) };
  const ways = (
    [
      [first, second],
      [second, first],
    ] as const
  ).map(([from, to]): W => {
    const lo = orderTable(work.modes[from]!, work.modes[to]!, slotCount);
    const order = { from: from + offset, to: to + offset, lo, hi: null, end: null };
    return { ...rest, net: { ...work.net, arcs: [...work.net.arcs, order] } };
  });
  const choices = (index: number): string[] => {
    const known = work.placeOf.get(index);
    return known === undefined ? placesFor(work.nodes[index]!, work.modes[index]!) : [known];
  };
  for (const one of choices(first)) {
    for (const other of choices(second)) {
      if (one !== other) ways.push({ ...rest, ...put(put(rest, first, one), second, other) });
    }
  }
  return ways;
}

export interface Settled {
  /** Start slots by node. */
  readonly values: Int32Array;
  /** Place by operation; `null` where it holds none. */
  readonly places: readonly (string | null)[];
}

function freePlaces(work: OwnWork, index: number, start: number): (string | null)[] {
  const { batch } = work.modes[index]!;
  if (batch !== null) return [batch.place];
  const named = work.placeOf.get(index);
  if (named !== undefined) return [named];
  const { byPlace } = work.nodes[index]!.starts;
  // An operation outside every pair may stand in a batch that was merged into its starts: it then has no free place.
  return byPlace.filter(({ starts }) => hasBit(starts, start)).map(({ place }) => place);
}

/** Deals out places for given starts; `null` when two operations of an open pair would share one. */
function dealPlaces(work: OwnWork, values: Int32Array): (string | null)[] | null {
  const offset = values.length - work.nodes.length;
  const overlaps = work.open.filter(({ first, second }) => {
    const [a, b] = [work.modes[first]!, work.modes[second]!];
    const [s, t] = [values[first + offset]!, values[second + offset]!];
    return a.firstHold[s]! < b.lastHoldEnd[t]! && b.firstHold[t]! < a.lastHoldEnd[s]!;
  });
  const places: (string | null)[] = [];
  const deal = (index: number): boolean => {
    if (index === work.nodes.length) return true;
    const free = freePlaces(work, index, values[index + offset]!);
    for (const place of free.length === 0 ? [null] : free) {
      const taken = overlaps.some(({ first, second }) => second === index && place !== null && places[first] === place);
      if (taken) continue;
      places[index] = place;
      if (deal(index + 1)) return true;
    }
    return false;
  };
  return deal(0) ? places : null;
}

/** The open pair that overlaps in a solution whose places cannot be dealt out. */
export function firstClash(work: OwnWork, values: Int32Array): Pair | null {
  if (dealPlaces(work, values) !== null) return null;
  const offset = values.length - work.nodes.length;
  return work.open.find(({ first, second }) => {
    const [a, b] = [work.modes[first]!, work.modes[second]!];
    const [s, t] = [values[first + offset]!, values[second + offset]!];
    return a.firstHold[s]! < b.lastHoldEnd[t]! && b.firstHold[t]! < a.lastHoldEnd[s]!;
  })!;
}

/** Starts and places for all operations when the net's visits are where they are, or `null`; settles a pair only when it clashes. */
export function settled(work: OwnWork): Settled | null {
  const values = smallestSolution(work.net);
  if (values === null) return null;
  const places = dealPlaces(work, values);
  if (places !== null) return { values, places };
  for (const way of settle(work, firstClash(work, values)!)) {
    const found = settled(way);
    if (found !== null) return found;
  }
  return null;
}

export function conflictsOf(
  problem: ChainProblem,
  phases: readonly number[],
  nodes: readonly Node[],
  sure: readonly boolean[][][],
): Pair[] {
  const keysOf = (node: Node): string[] => {
    const operation = problem.phases[node.phase]!.labs[node.lab]!.operations[node.operation]!;
    return [...operation.places.map(({ key }) => key), ...operation.batches.map(({ place }) => place)];
  };
  const holds = (node: Node): boolean =>
    problem.phases[node.phase]!.labs[node.lab]!.operations[node.operation]!.segments.some(
      ({ holdsPlace }) => holdsPlace,
    );
  const pairs: Pair[] = [];
  for (let first = 0; first < nodes.length; first++) {
    for (let second = first + 1; second < nodes.length; second++) {
      const a = nodes[first]!;
      const b = nodes[second]!;
      if (!holds(a) || !holds(b)) continue;
      if (a.phase === b.phase) {
        const order = sure[phases.indexOf(a.phase)]!;
        if (order[a.operation]![b.operation]! || order[b.operation]![a.operation]!) continue;
      } else {
        const [p, q] = [problem.phases[a.phase]!, problem.phases[b.phase]!];
        if (Math.max(p.after ?? -1, q.after ?? -1) >= Math.min(p.before, q.before)) continue;
      }
      const keys = keysOf(b);
      if (keysOf(a).some((key) => keys.includes(key))) pairs.push({ first, second });
    }
  }
  return pairs;
}
