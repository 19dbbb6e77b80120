import { byStart, delays, tablesIn, visitEnds } from './arcs.js';
import { and, emptyBits, fullBits, hasBit, setBit } from './bits.js';
import type { ChainCache } from './cache.js';
import type { ChainPhase, ChainProblem, LabAlternative, OpenBatch, SlotBits } from './model.js';
import type { Net, NetArc } from './net.js';
import { operationStarts, type OperationStarts } from './operation.js';

/** The clinic and length that a visit has in one option. */
export interface VisitPlace {
  readonly clinic: string;
  readonly lengthSlots: number;
}

/** One operation of a branch: where it starts, on which place it was put if that was part of the choice. */
export interface BranchOperation {
  readonly phase: number;
  readonly lab: number;
  readonly operation: number;
  readonly batch: OpenBatch | null;
  readonly place: string | null;
}

/** One choice of laboratories, places and orders that leaves a net without alternatives. */
export interface Branch {
  /** Nodes: first the group's visits in rising order, then its operations. */
  readonly net: Net;
  readonly operations: readonly BranchOperation[];
  /** Laboratory of each phase of the group. */
  readonly labs: readonly number[];
}

/** Phases that may meet on a place, hence to be solved together. */
export interface PhaseGroup {
  readonly phases: readonly number[];
  /** Indexes of the visits around them, rising. */
  readonly visits: readonly number[];
}

function placeKeys(phase: ChainPhase): Set<string> {
  const keys = new Set<string>();
  for (const lab of phase.labs) {
    for (const operation of lab.operations) {
      for (const place of operation.places) keys.add(place.key);
      for (const batch of operation.batches) keys.add(batch.place);
    }
  }
  return keys;
}

/** Splits the phases into groups that cannot meet on a place: no shared place, or one ends before the other begins. */
export function groupPhases(phases: readonly ChainPhase[]): PhaseGroup[] {
  const keys = phases.map(placeKeys);
  const groupOf = phases.map((_, index) => index);
  for (let left = 0; left < phases.length; left++) {
    for (let right = left + 1; right < phases.length; right++) {
      const a = phases[left]!;
      const b = phases[right]!;
      const meets = Math.max(a.after ?? -1, b.after ?? -1) < Math.min(a.before, b.before);
      if (!meets || ![...keys[left]!].some((key) => keys[right]!.has(key))) continue;
      const [keep, drop] = [groupOf[left]!, groupOf[right]!];
      for (let index = 0; index < groupOf.length; index++) if (groupOf[index] === drop) groupOf[index] = keep;
    }
  }
  return [...new Set(groupOf)].map((group) => {
    const members = groupOf.flatMap((of, index) => (of === group ? [index] : []));
    const visits = new Set<number>();
    for (const index of members) {
      const { after, before } = phases[index]!;
      if (after !== null) visits.add(after);
      visits.add(before);
    }
    return { phases: members, visits: [...visits].sort((a, b) => a - b) };
  });
}

interface Node {
  readonly phase: number;
  readonly lab: number;
  readonly operation: number;
  readonly starts: OperationStarts;
}

/** Way in which one operation is done: on any free place, or in one named batch. */
interface Mode {
  readonly batch: OpenBatch | null;
  readonly domain: SlotBits;
  readonly end: Int32Array;
  readonly firstHold: Int32Array;
  readonly lastHoldEnd: Int32Array;
}

function ordered(lab: LabAlternative, cache: ChainCache): boolean[][] {
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

function modesOf(problem: ChainProblem, node: Node, apart: boolean, cache: ChainCache): Mode[] {
  const { slotCount } = problem;
  const operation = problem.phases[node.phase]!.labs[node.lab]!.operations[node.operation]!;
  const key = `modes:${String(cache.id(operation))}:${String(slotCount)}:${apart ? 1 : 0}`;
  return cache.get(key, () => {
    const { starts } = node;
    const usable = operation.batches.filter(
      ({ startSlot }) => operation.allowed === null || hasBit(operation.allowed, startSlot),
    );
    // A batch that ends when the calendar says is just one more start, unless its place may matter.
    const merged = apart ? [] : usable.filter(({ startSlot, endSlot }) => starts.end[startSlot] === endSlot);
    const domain = starts.any.slice();
    for (const { startSlot } of merged) setBit(domain, startSlot);
    const own: Mode = { ...starts, batch: null, domain };
    const batches = usable
      .filter((batch) => !merged.includes(batch))
      .map((batch): Mode => {
        const only = emptyBits(slotCount);
        setBit(only, batch.startSlot);
        return {
          batch,
          domain: only,
          end: new Int32Array(slotCount).fill(batch.endSlot),
          firstHold: new Int32Array(slotCount).fill(batch.startSlot),
          lastHoldEnd: new Int32Array(slotCount).fill(batch.endSlot),
        };
      });
    return [own, ...batches];
  });
}

function product<T>(lists: readonly (readonly T[])[]): T[][] {
  return lists.reduce<T[][]>((rows, list) => rows.flatMap((row) => list.map((item) => [...row, item])), [[]]);
}

type Conflict = 'first-then-second' | 'second-then-first' | 'two-places';

interface Pair {
  readonly first: number;
  readonly second: number;
}

/** Places on which an operation may be put when the choice of the place matters. */
function placesFor(node: Node, mode: Mode): string[] {
  if (mode.batch !== null) return [mode.batch.place];
  return node.starts.byPlace.flatMap(({ place }) => (place === null ? [] : [place]));
}

/**
 * Every branch of a group for given clinics.
 *
 * @param ignoreOwnWork leaves out that operations of the case compete with each other
 */
export function branchesOf(
  problem: ChainProblem,
  group: PhaseGroup,
  places: readonly VisitPlace[],
  cache: ChainCache,
  ignoreOwnWork: boolean,
): Branch[] {
  const { slotCount } = problem;
  const branches: Branch[] = [];
  for (const labs of product(group.phases.map((phase) => problem.phases[phase]!.labs.map((_, lab) => lab)))) {
    const nodes: Node[] = [];
    const sure: boolean[][][] = [];
    group.phases.forEach((phase, at) => {
      const lab = problem.phases[phase]!.labs[labs[at]!]!;
      sure.push(ordered(lab, cache));
      lab.operations.forEach((operation, index) => {
        const starts = cache.get(`starts:${String(cache.id(operation))}:${String(slotCount)}`, () =>
          operationStarts(operation, slotCount),
        );
        nodes.push({ phase, lab: labs[at]!, operation: index, starts });
      });
    });
    const pairs = ignoreOwnWork ? [] : conflictsOf(problem, group, nodes, sure);
    const apart = new Set(pairs.flatMap(({ first, second }) => [first, second]));
    for (const modes of product(nodes.map((node, index) => modesOf(problem, node, apart.has(index), cache)))) {
      const base = netOf(problem, group, labs, places, nodes, modes, cache);
      const ways: readonly Conflict[] = ['first-then-second', 'second-then-first', 'two-places'];
      for (const way of product(pairs.map(() => ways))) {
        const orders: NetArc[] = [];
        const split = new Set<number>();
        pairs.forEach(({ first, second }, index) => {
          if (way[index] === 'two-places') {
            split.add(first);
            split.add(second);
            return;
          }
          const [from, to] = way[index] === 'first-then-second' ? [first, second] : [second, first];
          const lo = orderTable(modes[from]!, modes[to]!, slotCount);
          orders.push({ from: from + group.visits.length, to: to + group.visits.length, lo, hi: null });
        });
        const chosen = [...split];
        for (const named of product(chosen.map((index) => placesFor(nodes[index]!, modes[index]!)))) {
          const placeOf = new Map(chosen.map((index, at) => [index, named[at]!]));
          const clash = pairs.some(
            ({ first, second }, index) => way[index] === 'two-places' && placeOf.get(first) === placeOf.get(second),
          );
          if (clash) continue;
          const domains = base.domains.map((domain, at) => {
            const index = at - group.visits.length;
            const place = placeOf.get(index);
            if (place === undefined || modes[index]!.batch !== null) return domain;
            const starts = nodes[index]!.starts.byPlace.find((entry) => entry.place === place)!.starts;
            return and(domain, starts);
          });
          branches.push({
            net: { domains, arcs: [...base.arcs, ...orders] },
            operations: nodes.map((node, index) => ({
              phase: node.phase,
              lab: node.lab,
              operation: node.operation,
              batch: modes[index]!.batch,
              place: placeOf.get(index) ?? null,
            })),
            labs,
          });
        }
      }
    }
  }
  return branches;
}

function conflictsOf(
  problem: ChainProblem,
  group: PhaseGroup,
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
        const order = sure[group.phases.indexOf(a.phase)]!;
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

/** Visits with every start open, operations with their start sets, and all arcs of the phases. */
function netOf(
  problem: ChainProblem,
  group: PhaseGroup,
  labs: readonly number[],
  places: readonly VisitPlace[],
  nodes: readonly Node[],
  modes: readonly Mode[],
  cache: ChainCache,
): Net {
  const { slotCount } = problem;
  const all = cache.get(`all:${String(slotCount)}`, () => fullBits(slotCount));
  const domains = [...group.visits.map(() => all), ...modes.map(({ domain }) => domain)];
  const arcs: NetArc[] = [];
  const ends = (lengthSlots: number): Int32Array =>
    cache.get(`ends:${String(lengthSlots)}:${String(slotCount)}`, () => visitEnds(lengthSlots, slotCount));
  group.phases.forEach((index, position) => {
    const phase = problem.phases[index]!;
    const own = nodes.flatMap((node, at) => (node.phase === index ? [{ node, at }] : []));
    const afterNode = phase.after === null ? -1 : group.visits.indexOf(phase.after);
    const beforeNode = group.visits.indexOf(phase.before);
    const lab = phase.labs[labs[position]!]!;
    const waits = new Set<number>();
    const isAwaited = new Set<number>();
    for (const arc of lab.arcs) {
      if (arc.from === 'after' && afterNode < 0) continue;
      const from = typeof arc.from === 'number' ? group.visits.length + own[arc.from]!.at : afterNode;
      const to = typeof arc.to === 'number' ? group.visits.length + own[arc.to]!.at : beforeNode;
      const visit = arc.from === 'after' ? afterNode : arc.to === 'before' ? beforeNode : -1;
      const tables = tablesIn(arc, places[visit]?.clinic ?? null);
      const end = from < group.visits.length ? ends(places[from]!.lengthSlots) : modes[from - group.visits.length]!.end;
      const { lo, hi } = cache.get(
        `arc:${String(cache.id(tables.lo))}:${String(cache.id(tables.hi))}:${arc.anchor}:${String(cache.id(end))}`,
        () => byStart(tables, arc.anchor, end, slotCount),
      );
      arcs.push({ from, to, lo, hi });
      if (arc.anchor !== 'end' || !delays(tables, cache)) continue;
      if (typeof arc.to === 'number') waits.add(arc.to);
      if (typeof arc.from === 'number') isAwaited.add(arc.from);
    }
    // Work never begins before the visit it follows has ended, and is done when the next visit starts.
    for (const { node, at } of own) {
      const self = group.visits.length + at;
      if (afterNode >= 0 && !waits.has(node.operation)) {
        arcs.push({ from: afterNode, to: self, lo: ends(places[afterNode]!.lengthSlots), hi: null });
      }
      if (!isAwaited.has(node.operation)) arcs.push({ from: self, to: beforeNode, lo: modes[at]!.end, hi: null });
    }
  });
  return { domains, arcs };
}
