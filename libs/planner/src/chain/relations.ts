import { byStart, tablesIn, visitEnds } from './arcs.js';
import { and, orInto, setBit, emptyBits } from './bits.js';
import type { ChainCache } from './cache.js';
import type { ChainProblem, PhaseArc, SlotBits, VisitOption } from './model.js';
import { sweepUp } from './net.js';
import { branchesOf, type Branch, type PhaseGroup, type VisitPlace } from './phases.js';
import { bothPieces, lagPiece, projectNet, type Piece } from './piece.js';

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
}

function optionsOf(problem: ChainProblem, visits: readonly number[], options: readonly number[]): VisitOption[] {
  return visits.map((visit, at) => problem.visits[visit]!.options[options[at]!]!);
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
  return { visits: [from, to], label: lags[0]?.key ?? problem.visits[to]!.key, alternatives };
}

/** Everything that a group's branches depend on besides the problem's slots: laboratories, timetables, visit lengths. */
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
      const tables = lab.arcs.map((arc) => String(cache.id(tablesIn(arc, clinicOf(arc)))));
      return `${String(cache.id(lab))}(${tables.join(',')})`;
    });
    return `${String(at(phase.after))}>${String(at(phase.before))}:${labs.join('|')}`;
  });
  return `${String(problem.slotCount)}:${places.map(({ lengthSlots }) => String(lengthSlots)).join(',')}:${parts.join('&')}`;
}

/** Laboratory work of a group of phases, as pieces between its visits. */
export function phaseRelation(problem: ChainProblem, group: PhaseGroup, cache: ChainCache): Relation {
  const { slotCount } = problem;
  const { visits } = group;
  const build = (places: readonly VisitPlace[]): Alternative[] => {
    const alternatives: Alternative[] = [];
    for (const branch of branchesOf(problem, group, places, cache, false)) {
      if (visits.length === 1) {
        const starts = emptyBits(slotCount);
        sweepUp(branch.net, 0, (slot) => {
          setBit(starts, slot);
        });
        if (starts.some((word) => word !== 0)) {
          alternatives.push({ pieces: [], only: [{ visit: visits[0]!, starts }], branch, units: [] });
        }
        continue;
      }
      const pieces: JointPiece[] = [];
      let possible = true;
      for (let from = 0; from < visits.length && possible; from++) {
        for (let to = from + 1; to < visits.length && possible; to++) {
          const piece = projectNet(branch.net, from, to, slotCount);
          if (piece === null) possible = false;
          else pieces.push({ from: visits[from]!, to: visits[to]!, piece });
        }
      }
      if (possible) alternatives.push({ pieces, only: [], branch, units: [] });
    }
    return visits.length === 2 ? withReturns(alternatives, places) : alternatives;
  };
  /** The buffer counts from what the chosen laboratories could do at best, the case's other work ignored. */
  const withReturns = (alternatives: readonly Alternative[], places: readonly VisitPlace[]): Alternative[] => {
    const returns = group.phases.map((index) => {
      const { after, before } = problem.phases[index]!;
      if (after === null) return null;
      const alone: PhaseGroup = { phases: [index], visits: [after, before] };
      const best = new Map<number, Int32Array>();
      for (const branch of branchesOf(problem, alone, places, cache, true)) {
        const piece = projectNet(branch.net, 0, 1, slotCount);
        if (piece === null) continue;
        const known = best.get(branch.labs[0]!);
        best.set(
          branch.labs[0]!,
          known === undefined ? piece.lo : known.map((slot, at) => Math.min(slot, piece.lo[at]!)),
        );
      }
      return best;
    });
    return alternatives.map((alternative) => {
      let earliestReturn: Int32Array | null = null;
      returns.forEach((best, at) => {
        const own = best?.get(alternative.branch!.labs[at]!);
        if (own === undefined) return;
        const known: Int32Array | null = earliestReturn;
        earliestReturn = known === null ? own : (known as Int32Array).map((slot, index) => Math.max(slot, own[index]!));
      });
      const [first] = alternative.pieces;
      return { ...alternative, pieces: [{ ...first!, piece: { ...first!.piece, earliestReturn } }] };
    });
  };
  return {
    visits,
    label: group.phases.map((index) => problem.phases[index]!.key).join(' and '),
    alternatives: (options) => {
      const places = optionsOf(problem, visits, options);
      // Pieces name visits by index, so the indexes belong to the key as well.
      const key = `phase:${visits.join(',')}:${group.phases.join(',')}:${groupKey(problem, group, places, cache)}`;
      return cache.get(key, () => build(places));
    },
  };
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
  return { visits, label: 'kit', alternatives };
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
