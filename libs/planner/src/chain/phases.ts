import { delays, tablesIn, visitEnds } from './arcs.js';
import { emptyBits, fullBits, hasBit, setBit } from './bits.js';
import type { ChainCache } from './cache.js';
import type { ChainPhase, ChainProblem, SlotBits } from './model.js';
import type { Net, NetArc } from './net.js';
import { operationId, operationStarts } from './operation.js';
import { conflictsOf, ordered, type Mode, type Node, type OwnWork } from './own-work.js';

/** What laboratory work needs to know of a visit in one of its options. */
export interface VisitPlace {
  readonly clinic: string;
  readonly lengthSlots: number;
  /** Starts for which the clinic has room. */
  readonly room: SlotBits;
}

/** One choice of laboratories and batches: a net without alternatives but for the pairs still open. */
export interface Branch extends OwnWork {
  /** Laboratory of each phase of the group. */
  readonly labs: readonly number[];
  /** Starts for which each visit of the group has room. */
  readonly rooms: readonly SlotBits[];
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

function modesOf(problem: ChainProblem, node: Node, apart: boolean, cache: ChainCache): Mode[] {
  const { slotCount } = problem;
  const operation = problem.phases[node.phase]!.labs[node.lab]!.operations[node.operation]!;
  const key = `modes:${String(operationId(operation, cache))}:${String(slotCount)}:${apart ? 1 : 0}`;
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

/**
 * Every choice of laboratories and batches of a group for given clinics.
 *
 * @param compete whether operations of the case may meet on a place; else no pair is open
 */
export function branchesOf(
  problem: ChainProblem,
  group: PhaseGroup,
  places: readonly VisitPlace[],
  cache: ChainCache,
  compete: boolean,
): Branch[] {
  const { slotCount } = problem;
  const branches: Branch[] = [];
  const rooms = places.map(({ room }) => room);
  for (const labs of product(group.phases.map((phase) => problem.phases[phase]!.labs.map((_, lab) => lab)))) {
    const nodes: Node[] = [];
    const sure: boolean[][][] = [];
    group.phases.forEach((phase, at) => {
      const lab = problem.phases[phase]!.labs[labs[at]!]!;
      sure.push(ordered(lab, cache));
      lab.operations.forEach((operation, index) => {
        const starts = operationStarts(operation, slotCount, cache);
        nodes.push({ phase, lab: labs[at]!, operation: index, starts });
      });
    });
    const open = compete ? conflictsOf(problem, group.phases, nodes, sure) : [];
    const apart = new Set(open.flatMap(({ first, second }) => [first, second]));
    for (const modes of product(nodes.map((node, index) => modesOf(problem, node, apart.has(index), cache)))) {
      const net = netOf(problem, group, labs, places, nodes, modes, cache);
      branches.push({ net, nodes, modes, placeOf: new Map(), open, labs, rooms });
    }
  }
  return branches;
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
      arcs.push({ from, to, lo: tables.lo, hi: tables.hi, end: arc.anchor === 'end' ? end : null });
      if (arc.anchor !== 'end' || !delays(tables, cache)) continue;
      if (typeof arc.to === 'number') waits.add(arc.to);
      if (typeof arc.from === 'number') isAwaited.add(arc.from);
    }
    // Work never begins before the visit it follows has ended, and is done when the next visit starts.
    for (const { node, at } of own) {
      const self = group.visits.length + at;
      if (afterNode >= 0 && !waits.has(node.operation)) {
        arcs.push({ from: afterNode, to: self, lo: ends(places[afterNode]!.lengthSlots), hi: null, end: null });
      }
      if (!isAwaited.has(node.operation))
        arcs.push({ from: self, to: beforeNode, lo: modes[at]!.end, hi: null, end: null });
    }
  });
  return { domains, arcs, slotCount };
}
