import { addWords, and, hasBit, holdsWithin, isEmpty, nextBit, wordsOf, within, writeCommon } from './bits.js';
import type { Words } from './bits.js';
import type { SlotBits } from './model.js';
import { firstAtLeast, lastAtMost } from './monotone.js';
import { addImage, addPreimage, joins } from './piece.js';
import type { Joint, PreparedChain, State } from './prepare.js';
import { settleAt, type Alternative, type JointPiece } from './relations.js';

/** A part of the search space: start sets per visit and state, and the alternative taken for each relation off the tree. */
export interface Region {
  /** States per visit; those without any start may have been left out. */
  readonly states: readonly (readonly State[])[];
  readonly starts: readonly (readonly SlotBits[])[];
  /** Words of each visit; outside them all of its start sets are empty. */
  readonly words: readonly Words[];
  readonly decided: readonly (Alternative | null)[];
}

/** State and start of every visit. */
export interface Witness {
  readonly states: readonly State[];
  readonly starts: Int32Array;
}

/** Start sets of one visit by option. */
type OptionSets = Map<number, SlotBits>;

/**
 * The whole search space without what is in no chain: one region, or one per clinic when a chain stays in one. Clinics
 * without a chain are left out.
 */
export function wholeRegions(prepared: PreparedChain): Region[] {
  const { problem, states } = prepared;
  const clinics = problem.mixing === 'any-clinic' ? [null] : new Set(states[0]!.map(({ clinic }) => clinic));
  return [...clinics].flatMap((clinic) => regionOf(prepared, clinic) ?? []);
}

/** The chains of one clinic, or of all for `null`; clinicians are told apart only where a start is left at all. */
function regionOf(prepared: PreparedChain, clinic: string | null): Region | null {
  const { rooms, pool } = prepared;
  const states = prepared.states.map((list) => (clinic === null ? list : list.filter((own) => own.clinic === clinic)));
  return pool.scoped(() => {
    const sets = states.map((list, visit): OptionSets => {
      const byOption: OptionSets = new Map();
      for (const option of new Set(list.map((state) => state.option))) {
        const { common, anybody } = rooms[visit]![option]!;
        const bits = pool.take();
        if (writeCommon(bits, common, anybody, wordsOf([common]))) byOption.set(option, bits);
      }
      return byOption;
    });
    // Before any work is looked at: where one visit has no start, there is no chain.
    if (sets.some(({ size }) => size === 0)) return null;
    const decided = prepared.others.map(() => null);
    const words = sets.map((ofVisit) => wordsOf([...ofVisit.values()]));
    if (!narrow(prepared, sets, words, decided)) return null;
    return regionWithin(sets, words, states, ({ time }) => time, decided);
  });
}

/**
 * The region of what is left of each state's starts within the sets of its option.
 *
 * @param before words outside which the sets are empty
 */
function regionWithin(
  sets: readonly OptionSets[],
  before: readonly Words[],
  states: Region['states'],
  startsOf: (state: State, visit: number, index: number) => SlotBits,
  decided: Region['decided'],
): Region {
  const region = { states: states.map((): State[] => []), starts: states.map((): SlotBits[] => []) };
  const words = sets.map((ofVisit, visit) => wordsOf([...ofVisit.values()], before[visit]));
  states.forEach((list, visit) => {
    list.forEach((state, index) => {
      const left = sets[visit]!.get(state.option);
      if (left === undefined) return;
      const own = new Uint32Array(left.length);
      if (!writeCommon(own, left, startsOf(state, visit, index), words[visit]!)) return;
      region.states[visit]!.push(state);
      region.starts[visit]!.push(own);
    });
  });
  return { ...region, words, decided };
}

/** The region with one visit's start sets replaced by parts of them. */
export function withStarts(region: Region, visit: number, change: (bits: SlotBits, state: State) => SlotBits): Region {
  const states = region.states[visit]!;
  return {
    ...region,
    starts: region.starts.map((list, index) =>
      index === visit ? list.map((bits, state) => change(bits, states[state]!)) : list,
    ),
  };
}

/** The region with a visit starting in `first .. last`. */
export function between(region: Region, visit: number, first: number, last: number): Region {
  return withStarts(region, visit, (bits) => within(bits, first, last));
}

/** Start sets per visit and option, clinicians joined; of the pool. */
function byOption({ pool }: PreparedChain, region: Region): OptionSets[] {
  return region.states.map((list, visit) => {
    const sets: OptionSets = new Map();
    list.forEach(({ option }, state) => {
      const bits = region.starts[visit]![state]!;
      let known = sets.get(option);
      if (known === undefined) {
        if (!holdsWithin(bits, region.words[visit]!)) return;
        known = pool.take();
        sets.set(option, known);
      }
      addWords(known, bits, region.words[visit]!);
    });
    return sets;
  });
}

/** One pass over a joint: what of the later (or earlier) visit has a partner on the other side. */
function restrict(
  { pool }: PreparedChain,
  sets: readonly OptionSets[],
  { early, late, pieces }: Joint,
  ofLate: boolean,
  words: readonly Words[],
): void {
  const [target, source] = ofLate ? [late, early] : [early, late];
  for (const [option, bits] of sets[target]!) {
    const out = pool.take();
    for (const [other, partners] of sets[source]!) {
      const [earlyOption, lateOption] = ofLate ? [other, option] : [option, other];
      for (const piece of pieces(earlyOption, lateOption)) {
        if (ofLate) addImage(partners, piece, out);
        else addPreimage(partners, piece, bits, out);
      }
    }
    // Partners may lie where this visit has no starts.
    const kept = pool.take();
    if (writeCommon(kept, out, bits, words[target]!)) sets[target]!.set(option, kept);
    else sets[target]!.delete(option);
  }
}

/** What a region knows of its relations off the tree, as joints: the alternatives taken, and all of those not yet decided. */
function crossingsOf({ crossings }: PreparedChain, decided: Region['decided']): Joint[] {
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
 * @param words outside which the sets of each visit are empty
 * @returns `false` when nothing is left
 */
function narrow(
  prepared: PreparedChain,
  sets: readonly OptionSets[],
  words: readonly Words[],
  decided: Region['decided'],
): boolean {
  const { problem, links } = prepared;
  const across = crossingsOf(prepared, decided);
  for (const joint of across) restrict(prepared, sets, joint, true, words);
  for (const joint of across) restrict(prepared, sets, joint, false, words);
  for (const link of links) restrict(prepared, sets, link, link.parent === link.late, words);
  if (sets[problem.deliveryVisit]!.size === 0) return false;
  for (let index = links.length - 1; index >= 0; index--) {
    const link = links[index]!;
    restrict(prepared, sets, link, link.child === link.late, words);
  }
  return true;
}

/** The region without starts that are in no chain, see {@link narrow}; `null` when nothing is left. */
export function shrink(prepared: PreparedChain, region: Region): Region | null {
  return prepared.pool.scoped(() => {
    const sets = byOption(prepared, region);
    if (!narrow(prepared, sets, region.words, region.decided)) return null;
    return regionWithin(
      sets,
      region.words,
      region.states,
      (_, visit, index) => region.starts[visit]![index]!,
      region.decided,
    );
  });
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
    alternative.only.every(({ visit, starts: bits }) => hasBit(bits, starts[visit]!))
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
    region.states[visit]!.forEach(({ option }, state) => {
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
      relation.visits.forEach((visit, at) => {
        next = onlyStates(next, visit, ({ option }) => option === options[at]);
      });
      return next;
    }),
  );
}

/** The region with a visit in some of its states only. */
export function onlyStates(region: Region, visit: number, keeps: (state: State) => boolean): Region {
  const isKept = region.states[visit]!.map(keeps);
  const only = <T>(lists: readonly (readonly T[])[]): (readonly T[])[] =>
    lists.map((list, index) => (index === visit ? list.filter((_, state) => isKept[state]) : list));
  return { ...region, states: only(region.states), starts: only(region.starts) };
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
      const options = relation.visits.map((visit) => witness.states[visit]!.option);
      const kept =
        relation.keeps?.(options, witness.starts) ??
        satisfied(relation.alternatives(options), witness.starts) !== undefined;
      if (kept) continue;
      const parts = decide(prepared, region, index);
      // Where there is one way only, taking it settles nothing yet: the witness still breaks it.
      const [only] = parts;
      return only !== undefined && parts.length === 1 ? (split(prepared, only, witness) ?? parts) : parts;
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
