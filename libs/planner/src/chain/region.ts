import { and, emptyBits, isEmpty, nextBit, orInto, within } from './bits.js';
import type { SlotBits } from './model.js';
import { firstAtLeast, lastAtMost } from './monotone.js';
import { addImage, addPreimage, joins } from './piece.js';
import type { Joint, PreparedChain } from './prepare.js';
import { settleAt, type Alternative, type JointPiece } from './relations.js';

/** A part of the search space: start sets per visit and state, and the alternative taken for each relation off the tree. */
export interface Region {
  readonly starts: readonly (readonly SlotBits[])[];
  readonly decided: readonly (Alternative | null)[];
}

/** State and start of every visit. */
export interface Witness {
  readonly states: Int32Array;
  readonly starts: Int32Array;
}

/** The whole search space: one region, or one per clinic when a chain stays in one. */
export function wholeRegions(prepared: PreparedChain): Region[] {
  const { problem, states, others } = prepared;
  const decided = others.map(() => null);
  const all = { starts: states.map((list) => list.map(({ starts }) => starts)), decided };
  if (problem.mixing === 'any-clinic') return [all];
  const clinics = new Set(states[0]!.map(({ clinic }) => clinic));
  if (clinics.size === 1 && states.every((list) => list.every(({ clinic }) => clinics.has(clinic)))) return [all];
  const none = emptyBits(problem.slotCount);
  return [...clinics].map((clinic) => ({
    starts: states.map((list) => list.map((state) => (state.clinic === clinic ? state.starts : none))),
    decided,
  }));
}

/** The region with one visit's start sets replaced. */
export function withStarts(region: Region, visit: number, change: (bits: SlotBits, state: number) => SlotBits): Region {
  return { ...region, starts: region.starts.map((list, index) => (index === visit ? list.map(change) : list)) };
}

/** The region with a visit starting in `first .. last`. */
export function between(region: Region, visit: number, first: number, last: number): Region {
  return withStarts(region, visit, (bits) => within(bits, first, last));
}

/** Start sets per visit and option, clinicians joined. */
function byOption(prepared: PreparedChain, region: Region): Map<number, SlotBits>[] {
  return prepared.states.map((list, visit) => {
    const sets = new Map<number, SlotBits>();
    list.forEach(({ option }, state) => {
      const bits = region.starts[visit]![state]!;
      const known = sets.get(option);
      if (known === undefined) {
        if (!isEmpty(bits)) sets.set(option, bits.slice());
      } else orInto(known, bits);
    });
    return sets;
  });
}

function keep(sets: Map<number, SlotBits>, option: number, bits: SlotBits): void {
  if (isEmpty(bits)) sets.delete(option);
  else sets.set(option, bits);
}

/** One pass over a joint: what of the later (or earlier) visit has a partner on the other side. */
function restrict(
  prepared: PreparedChain,
  sets: readonly Map<number, SlotBits>[],
  { early, late, pieces }: Joint,
  ofLate: boolean,
): void {
  const [target, source] = ofLate ? [late, early] : [early, late];
  for (const [option, bits] of sets[target]!) {
    const out = emptyBits(prepared.problem.slotCount);
    for (const [other, partners] of sets[source]!) {
      const [earlyOption, lateOption] = ofLate ? [other, option] : [option, other];
      for (const piece of pieces(earlyOption, lateOption)) {
        if (ofLate) addImage(partners, piece, out);
        else addPreimage(partners, piece, bits, out);
      }
    }
    keep(sets[target]!, option, ofLate ? and(out, bits) : out);
  }
}

/** What a region knows of its relations off the tree, as joints: the alternatives taken, and all of those not yet decided. */
function crossingsOf({ crossings }: PreparedChain, { decided }: Region): Joint[] {
  return decided.flatMap((alternative, index): Joint[] => {
    const undecided = crossings[index] ?? null;
    if (alternative === null) return undecided === null ? [] : [undecided];
    return alternative.pieces.map(({ from, to, piece }) => ({ early: from, late: to, pieces: () => [piece] }));
  });
}

/**
 * Drops starts that are in no chain: all of those that the tree leaves out, by one pass towards delivery and one back,
 * and those without a partner over a relation off the tree.
 *
 * @returns `null` when nothing is left
 */
export function shrink(prepared: PreparedChain, region: Region): Region | null {
  const { problem, links, states } = prepared;
  const sets = byOption(prepared, region);
  const across = crossingsOf(prepared, region);
  for (const joint of across) restrict(prepared, sets, joint, true);
  for (const joint of across) restrict(prepared, sets, joint, false);
  for (const link of links) restrict(prepared, sets, link, link.parent === link.late);
  if (sets[problem.deliveryVisit]!.size === 0) return null;
  for (let index = links.length - 1; index >= 0; index--) {
    const link = links[index]!;
    restrict(prepared, sets, link, link.child === link.late);
  }
  const none = emptyBits(problem.slotCount);
  return {
    ...region,
    starts: region.starts.map((list, visit) =>
      list.map((bits, state) => {
        const kept = sets[visit]!.get(states[visit]![state]!.option);
        return kept === undefined ? none : and(bits, kept);
      }),
    ),
  };
}

/** Lowest start of a visit in a region, or -1. */
export function firstStart(region: Region, visit: number): number {
  let first = -1;
  for (const bits of region.starts[visit]!) {
    const slot = nextBit(bits, 0);
    if (slot >= 0 && (first < 0 || slot < first)) first = slot;
  }
  return first;
}

function satisfies(alternative: Alternative, starts: Int32Array): boolean {
  return (
    alternative.pieces.every(({ from, to, piece }) => joins(piece, starts[from]!, starts[to]!)) &&
    alternative.only.every(
      ({ visit, starts: bits }) => ((bits[starts[visit]! >> 5]! >>> (starts[visit]! & 31)) & 1) === 1,
    )
  );
}

/** The first alternative of a list that the starts satisfy. */
export function satisfied(alternatives: readonly Alternative[], starts: Int32Array): Alternative | undefined {
  return alternatives.find((alternative) => satisfies(alternative, starts));
}

/** The region with an alternative taken for a relation, its start sets applied. */
function taking(region: Region, index: number, alternative: Alternative): Region {
  let next: Region = { ...region, decided: region.decided.map((known, at) => (at === index ? alternative : known)) };
  for (const { from, to, piece } of alternative.pieces) {
    if (piece.from !== null) next = withStarts(next, from, (bits) => and(bits, piece.from!));
    if (piece.to !== null) next = withStarts(next, to, (bits) => and(bits, piece.to!));
  }
  for (const { visit, starts } of alternative.only) next = withStarts(next, visit, (bits) => and(bits, starts));
  return next;
}

function decide(prepared: PreparedChain, region: Region, index: number): Region[] {
  const relation = prepared.others[index]!;
  const present = relation.visits.map((visit) => {
    const options = new Set<number>();
    prepared.states[visit]!.forEach(({ option }, state) => {
      if (!isEmpty(region.starts[visit]![state]!)) options.add(option);
    });
    return [...options];
  });
  const choices = present.reduce<number[][]>(
    (rows, list) => rows.flatMap((row) => list.map((item) => [...row, item])),
    [[]],
  );
  return choices.flatMap((options) =>
    relation.alternatives(options).map((alternative) => {
      let next = taking(region, index, alternative);
      const none = emptyBits(prepared.problem.slotCount);
      relation.visits.forEach((visit, at) => {
        next = withStarts(next, visit, (bits, state) =>
          prepared.states[visit]![state]!.option === options[at] ? bits : none,
        );
      });
      return next;
    }),
  );
}

/**
 * Two parts that hold every plan of a region and not the witness, when it breaks a piece; else `null`.
 *
 * The cut lies where the bound first lets the witness's later start pass, not at its earlier start: the bounds of days
 * stay the same for hundreds of slots, which would otherwise be cut off one by one.
 */
function cut(
  prepared: PreparedChain,
  region: Region,
  { from, to, piece }: JointPiece,
  witness: Witness,
): Region[] | null {
  const last = prepared.problem.slotCount - 1;
  const t = witness.starts[from]!;
  const y = witness.starts[to]!;
  if (y > piece.hi[t]!) {
    const end = lastAtMost((slot) => piece.hi[slot]!, y - 1, t, last);
    return [between(between(region, from, 0, end), to, 0, piece.hi[end]!), between(region, from, end + 1, last)];
  }
  if (y < piece.lo[t]!) {
    const begin = firstAtLeast((slot) => piece.lo[slot]!, y + 1, 0, t);
    return [
      between(between(region, from, begin, last), to, piece.lo[begin]!, last),
      between(region, from, 0, begin - 1),
    ];
  }
  return null;
}

/**
 * Checks a witness against the relations off the tree.
 *
 * @returns `null` when it keeps them all; else parts of the region that together hold every plan of it, each smaller or
 * with more decided
 */
export function split(prepared: PreparedChain, region: Region, witness: Witness): Region[] | null {
  for (let index = 0; index < prepared.others.length; index++) {
    const decided = region.decided[index] ?? null;
    if (decided === null) {
      const relation = prepared.others[index]!;
      const options = relation.visits.map((visit) => prepared.states[visit]![witness.states[visit]!]!.option);
      const kept =
        relation.keeps?.(options, witness.starts) ??
        satisfied(relation.alternatives(options), witness.starts) !== undefined;
      if (kept) continue;
      return decide(prepared, region, index);
    }
    for (const joint of decided.pieces) {
      const parts = cut(prepared, region, joint, witness);
      if (parts !== null) return parts;
    }
    const parts = settleAt(decided, prepared.others[index]!.visits, witness.starts);
    if (parts !== null) return parts.map((part) => taking(region, index, part));
  }
  return null;
}
