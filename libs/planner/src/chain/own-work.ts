import { delays } from './arcs.js';
import { and } from './bits.js';
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

/**
 * Gives every way in which operations that may meet on a place keep out of each other's way: one first, the other
 * first, or on two named places. A way that leaves no solution is given up at once.
 *
 * @param offset nodes of `base` before the operations
 */
export function forEachOrder(
  base: Net,
  pairs: readonly Pair[],
  modes: readonly Mode[],
  nodes: readonly Node[],
  offset: number,
  found: (net: Net, placeOf: ReadonlyMap<number, string>) => void,
): void {
  const slotCount = modes[0]?.end.length ?? 0;
  const put = (net: Net, placeOf: ReadonlyMap<number, string>, index: number, place: string): Net => {
    if (placeOf.has(index) || modes[index]!.batch !== null) return net;
    const { starts } = nodes[index]!.starts.byPlace.find((entry) => entry.place === place)!;
    return { ...net, domains: net.domains.map((bits, at) => (at === index + offset ? and(bits, starts) : bits)) };
  };
  const settle = (at: number, net: Net, placeOf: ReadonlyMap<number, string>): void => {
    if (smallestSolution(net) === null) return;
    const pair = pairs[at];
    if (pair === undefined) {
      found(net, placeOf);
      return;
    }
    const { first, second } = pair;
    for (const [from, to] of [
      [first, second],
      [second, first],
    ] as const) {
      const lo = orderTable(modes[from]!, modes[to]!, slotCount);
      settle(at + 1, { ...net, arcs: [...net.arcs, { from: from + offset, to: to + offset, lo, hi: null }] }, placeOf);
    }
    const choices = (index: number): string[] => {
      const known = placeOf.get(index);
      return known === undefined ? placesFor(nodes[index]!, modes[index]!) : [known];
    };
    for (const one of choices(first)) {
      for (const other of choices(second)) {
        if (one === other) continue;
        const next = put(put(net, placeOf, first, one), placeOf, second, other);
        settle(at + 1, next, new Map([...placeOf, [first, one], [second, other]]));
      }
    }
  };
  settle(0, base, new Map());
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
