import { byStart, tablesIn, visitEnds } from './arcs.js';
import { and, andInto, emptyBits, isEmpty, orInto, setBit, setRange } from './bits.js';
import type { ChainCache } from './cache.js';
import type { ChainProblem, LabAlternative, PhaseArc, SlotBits, VisitOption } from './model.js';
import { smallestSolution, sweepUp } from './net.js';
import { operationId } from './operation.js';
import { firstClash, settle, settled, type Settled } from './own-work.js';
import { branchesOf, type Branch, type PhaseGroup, type VisitPlace } from './phases.js';
import { bothPieces, lagPiece, projectNet, type Piece } from './piece.js';
import { roomFor } from './room.js';

export interface JointPiece {
  readonly from: number;
  readonly to: number;
  readonly piece: Piece;
}

/** One way to satisfy a relation: all of its pieces and start sets at once. */
export interface Alternative {
  readonly pieces: readonly JointPiece[];
  readonly only: readonly { readonly visit: number; readonly starts: SlotBits }[];
  /** The laboratory work behind it; `null` for waits and kits. */
  readonly branch: Branch | null;
  /** Kit units that it fixes, by visit and kit need. */
  readonly units: readonly { readonly visit: number; readonly need: number; readonly unit: string }[];
}

/** What several visits have to satisfy together: at least one alternative. */
export interface Relation {
  readonly visits: readonly number[];
  /** Names the lag, phase or kit in reasons. */
  readonly label: string;
  /** @param options index of the chosen option per visit of `visits` */
  readonly alternatives: (options: readonly number[]) => readonly Alternative[];
  /** Whether starts satisfy it, where the alternatives alone do not tell; `null` where they do. */
  readonly keeps: ((options: readonly number[], starts: Int32Array) => boolean) | null;
}

function optionsOf(problem: ChainProblem, visits: readonly number[], options: readonly number[]): VisitOption[] {
  return visits.map((visit, at) => problem.visits[visit]!.options[options[at]!]!);
}

function placesOf(
  problem: ChainProblem,
  visits: readonly number[],
  options: readonly number[],
  cache: ChainCache,
): VisitPlace[] {
  return optionsOf(problem, visits, options).map((option) => ({
    clinic: option.clinic,
    lengthSlots: option.lengthSlots,
    room: roomFor(option, problem.slotCount, cache),
  }));
}

/** All waits between one pair of visits, and that the later one never begins before the earlier one ends. */
export function waitRelation(problem: ChainProblem, from: number, to: number, cache: ChainCache): Relation {
  const { slotCount } = problem;
  const lags = problem.lags.filter((lag) => lag.from === from && lag.to === to);
  const alternatives = (options: readonly number[]): Alternative[] => {
    const [origin] = optionsOf(problem, [from], options);
    const tables = lags.map((lag) => ({ lag, tables: tablesIn(lag, origin!.clinic) }));
    const ids = tables.map(
      ({ lag, tables: { lo, hi } }) => `${String(cache.id(lo))},${String(cache.id(hi))},${lag.anchor}`,
    );
    const key = `wait:${String(slotCount)}:${String(origin!.lengthSlots)}:${String(to === from + 1)}:${ids.join(';')}`;
    const piece = cache.get(key, () => {
      const end = visitEnds(origin!.lengthSlots, slotCount);
      const lo = to === from + 1 ? end.slice() : new Int32Array(slotCount);
      const hi = new Int32Array(slotCount).fill(slotCount - 1);
      for (const { lag, tables: given } of tables) {
        const bounds = byStart(given, lag.anchor, end, slotCount);
        for (let slot = 0; slot < slotCount; slot++) {
          if (bounds.lo !== null) lo[slot] = Math.max(lo[slot]!, bounds.lo[slot]!);
          if (bounds.hi !== null) hi[slot] = Math.min(hi[slot]!, bounds.hi[slot]!);
        }
      }
      return lagPiece(slotCount, lo, hi);
    });
    return [{ pieces: [{ from, to, piece }], only: [], branch: null, units: [] }];
  };
  return { visits: [from, to], label: lags[0]?.key ?? problem.visits[to]!.key, alternatives, keeps: null };
}

/** Number of a laboratory's work by operations and the order among them, tables left aside. */
function labId(lab: LabAlternative, cache: ChainCache): number {
  return cache.idOfContent(lab, () => {
    const operations = lab.operations.map((operation) => operationId(operation, cache)).join();
    const arcs = lab.arcs.map(({ from, to, anchor }) => `${String(from)} ${String(to)} ${anchor}`).join();
    return `lab;${operations};${arcs}`;
  });
}

/** Everything that a group's branches depend on: laboratories, timetables, lengths and room of the visits. */
function groupKey(problem: ChainProblem, group: PhaseGroup, places: readonly VisitPlace[], cache: ChainCache): string {
  const parts = group.phases.map((index) => {
    const phase = problem.phases[index]!;
    const at = (visit: number | null): number => (visit === null ? -1 : group.visits.indexOf(visit));
    const clinicOf = (arc: PhaseArc): string | null =>
      arc.from === 'after'
        ? (places[at(phase.after)]?.clinic ?? null)
        : arc.to === 'before'
          ? places[at(phase.before)]!.clinic
          : null;
    const labs = phase.labs.map((lab) => {
      const tables = lab.arcs.map((arc) => {
        const { lo, hi } = tablesIn(arc, clinicOf(arc));
        return `${String(cache.id(lo))}-${String(cache.id(hi))}`;
      });
      return `${String(labId(lab, cache))}(${tables.join(',')})`;
    });
    return `${String(index)}=${String(at(phase.after))}>${String(at(phase.before))}:${labs.join('|')}`;
  });
  return `${String(problem.slotCount)}:${places.map(({ lengthSlots, room }) => `${lengthSlots}/${cache.id(room)}`).join(',')}:${parts.join('&')}`;
}

/** A branch as pieces between all pairs of its visits; `null` when it has no solution. */
function alternativeOf(branch: Branch, visits: readonly number[], slotCount: number): Alternative | null {
  if (visits.length === 1) {
    const starts = emptyBits(slotCount);
    sweepUp(branch.net, 0, (first, last) => {
      setRange(starts, first, last);
    });
    andInto(starts, branch.net.domains[0]!);
    if (isEmpty(starts)) return null;
    return { pieces: [], only: [{ visit: visits[0]!, starts }], branch, units: [] };
  }
  const pieces: JointPiece[] = [];
  for (let from = 0; from < visits.length; from++) {
    for (let to = from + 1; to < visits.length; to++) {
      const piece = projectNet(branch.net, from, to, branch.rooms[from]!);
      if (piece === null) return null;
      pieces.push({ from: visits[from]!, to: visits[to]!, piece });
    }
  }
  return { pieces, only: [], branch, units: [] };
}

function alternativesOf(branches: readonly Branch[], visits: readonly number[], slotCount: number): Alternative[] {
  return branches.flatMap((branch) => alternativeOf(branch, visits, slotCount) ?? []);
}

/** The buffer counts from what the chosen laboratory could do at best. */
function withReturns(alternatives: readonly Alternative[]): Alternative[] {
  const best = new Map<number, Int32Array>();
  for (const { pieces, branch } of alternatives) {
    const lab = branch!.labs[0]!;
    const { lo } = pieces[0]!.piece;
    best.set(lab, best.get(lab)?.map((slot, at) => Math.min(slot, lo[at]!)) ?? lo);
  }
  return alternatives.map((alternative) => {
    const [first] = alternative.pieces;
    const piece: Piece = { ...first!.piece, earliestReturn: best.get(alternative.branch!.labs[0]!)! };
    return { ...alternative, pieces: [{ ...first!, piece }] };
  });
}

/** The work of one phase, the case's other work left aside, as pieces between its visits. */
export function phaseRelation(problem: ChainProblem, phase: number, cache: ChainCache): Relation {
  const { slotCount } = problem;
  const { after, before, key: label } = problem.phases[phase]!;
  const visits = after === null ? [before] : [after, before];
  const group: PhaseGroup = { phases: [phase], visits };
  const alternatives = (options: readonly number[]): Alternative[] => {
    const places = placesOf(problem, visits, options, cache);
    // Pieces name visits by index, so the indexes belong to the key as well.
    const key = `phase:${visits.join(',')}:${groupKey(problem, group, places, cache)}`;
    return cache.get(key, () => {
      const found = alternativesOf(branchesOf(problem, group, places, cache, false), visits, slotCount);
      return visits.length === 2 ? withReturns(found) : found;
    });
  };
  return { visits, label, alternatives, keeps: null };
}

/** The starts of a net's visits fixed. */
function fixed(branch: Branch, visits: readonly number[], starts: Int32Array): Branch {
  const domains = branch.net.domains.map((domain, node) => {
    const visit = visits[node];
    if (visit === undefined) return domain;
    const only = emptyBits(domain.length << 5);
    setBit(only, starts[visit]!);
    return only;
  });
  return { ...branch, net: { ...branch.net, domains } };
}

/** Laboratories, starts and places for all work of a group between given starts of its visits, or `null`. */
export function workBetween(
  problem: ChainProblem,
  group: PhaseGroup,
  options: readonly number[],
  starts: Int32Array,
  cache: ChainCache,
): { readonly branch: Branch; readonly settled: Settled } | null {
  const places = placesOf(problem, group.visits, options, cache);
  for (const branch of groupBranches(problem, group, places, cache)) {
    const found = settled(fixed(branch, group.visits, starts));
    if (found !== null) return { branch, settled: found };
  }
  return null;
}

function groupBranches(
  problem: ChainProblem,
  group: PhaseGroup,
  places: readonly VisitPlace[],
  cache: ChainCache,
): Branch[] {
  const key = `group:${group.visits.join(',')}:${group.phases.join(',')}:${groupKey(problem, group, places, cache)}`;
  return cache.get(key, () => branchesOf(problem, group, places, cache, true));
}

/** That the case's own operations do not want one place at a time; `null` when no two of them can. */
export function ownWorkRelation(problem: ChainProblem, group: PhaseGroup, cache: ChainCache): Relation | null {
  const { visits } = group;
  const first = placesOf(
    problem,
    visits,
    visits.map(() => 0),
    cache,
  );
  if (groupBranches(problem, group, first, cache).every(({ open }) => open.length === 0)) return null;
  return {
    visits,
    label: group.phases.map((index) => problem.phases[index]!.key).join(' and '),
    alternatives: (options) =>
      alternativesOf(
        groupBranches(problem, group, placesOf(problem, visits, options, cache), cache),
        visits,
        problem.slotCount,
      ),
    keeps: (options, starts) => workBetween(problem, group, options, starts, cache) !== null,
  };
}

/**
 * Parts of an alternative that together hold all of its solutions, one pair of clashing operations settled; `null`
 * when the starts as they are leave no clash.
 */
export function settleAt(
  alternative: Alternative,
  visits: readonly number[],
  starts: Int32Array,
): Alternative[] | null {
  const { branch } = alternative;
  if (branch === null || branch.open.length === 0) return null;
  const here = fixed(branch, visits, starts);
  if (settled(here) !== null) return null;
  const clash = firstClash(here, smallestSolution(here.net)!)!;
  return alternativesOf(settle(branch, clash), visits, branch.modes[clash.first]!.end.length);
}

interface KitUse {
  readonly visit: number;
  readonly at: number;
  readonly need: number;
}

/** That a kit unit used by one visit is ready again before another visit of the case takes it. */
export function kitRelation(
  problem: ChainProblem,
  visits: readonly number[],
  startsWith: (free: SlotBits, lengthSlots: number) => SlotBits,
): Relation {
  const { slotCount } = problem;
  const alternatives = (indexes: readonly number[]): Alternative[] => {
    const options = optionsOf(problem, visits, indexes);
    const uses: KitUse[] = options.flatMap((option, at) =>
      option.kits.map((_, need) => ({ visit: visits[at]!, at, need })),
    );
    const needOf = (use: KitUse) => options[use.at]!.kits[use.need]!;
    const pairs: [KitUse, KitUse][] = [];
    for (const first of uses) {
      for (const second of uses) {
        if (first.at >= second.at) continue;
        const keys = new Set(needOf(second).units.map(({ key }) => key));
        if (needOf(first).units.some(({ key }) => keys.has(key))) pairs.push([first, second]);
      }
    }
    const involved = uses.filter((use) => pairs.some((pair) => pair.includes(use)));
    const out: Alternative[] = [];
    const assign = (at: number, units: readonly string[]): void => {
      if (at < involved.length) {
        for (const { key } of needOf(involved[at]!).units) assign(at + 1, [...units, key]);
        return;
      }
      const unitOf = (use: KitUse): string => units[involved.indexOf(use)]!;
      const pieces = pairs.flatMap(([first, second]) => {
        if (unitOf(first) !== unitOf(second)) return [];
        const away = options[first.at]!.lengthSlots + needOf(first).reprocessingSlots;
        return [{ from: first.visit, to: second.visit, piece: lagPiece(slotCount, visitEnds(away, slotCount), null) }];
      });
      const only = involved.map((use) => {
        const need = needOf(use);
        const unit = need.units.find(({ key }) => key === unitOf(use))!;
        return {
          visit: use.visit,
          starts: startsWith(unit.free, options[use.at]!.lengthSlots + need.reprocessingSlots),
        };
      });
      out.push({ pieces, only, branch: null, units: involved.map((use) => ({ ...use, unit: unitOf(use) })) });
    };
    assign(0, []);
    return out;
  };
  return { visits, label: 'kit', alternatives, keeps: null };
}

/** One piece for a pair: the pieces and start sets of an alternative joined. */
export function asPiece(alternative: Alternative, from: number, to: number, slotCount: number): Piece {
  let piece = alternative.pieces[0]?.piece ?? lagPiece(slotCount, null, null);
  for (const { piece: more } of alternative.pieces.slice(1)) piece = bothPieces(piece, more);
  for (const { visit, starts } of alternative.only) {
    const side = visit === from ? 'from' : 'to';
    if (visit !== from && visit !== to) continue;
    const known = piece[side];
    piece = { ...piece, [side]: known === null ? starts : and(known, starts) };
  }
  return piece;
}

/** Union of the start sets that a relation on one visit allows. */
export function allowedBy(alternatives: readonly Alternative[], slotCount: number): SlotBits {
  const out = emptyBits(slotCount);
  for (const { only } of alternatives) for (const { starts } of only) orInto(out, starts);
  return out;
}
