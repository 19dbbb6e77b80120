import { addWords, emptyBits, hasBit, slotsOf } from './bits.js';
import type { Objective } from './objective.js';
import type { Piece } from './piece.js';
import type { Link, PreparedChain, State } from './prepare.js';
import type { Region, Witness } from './region.js';

export interface Best extends Witness {
  readonly cost: number;
}

/** A witness in the making. */
interface Found {
  readonly states: State[];
  readonly starts: Int32Array;
}

/** Rising slots with the least cost of the part of the tree hanging there. */
interface Costs {
  readonly slots: Int32Array;
  readonly values: Float64Array;
}

function ownCosts(prepared: PreparedChain, region: Region, objective: Objective, visit: number, state: number): Costs {
  const { problem } = prepared;
  const { weights } = objective;
  const { clinic, clinician, placementCost } = region.states[visit]![state]!;
  const { wished } = problem.visits[visit]!;
  const now = objective.current[visit] ?? null;
  let fixed = 0;
  if (visit === 0 && problem.seenBy !== null) {
    if (problem.seenBy.clinician !== clinician) fixed += weights.clinicians;
    if (problem.seenBy.clinic !== clinic) fixed += weights.clinics;
  }
  const slots = slotsOf(region.starts[visit]![state]!, region.words[visit]);
  const values = new Float64Array(slots.length);
  for (let at = 0; at < slots.length; at++) {
    const slot = slots[at]!;
    let cost = fixed + slot * weights.start;
    if (wished !== null && !hasBit(wished, slot)) cost += weights.wishes;
    if (placementCost !== null) cost += placementCost[slot]! * weights.placement;
    if (now !== null && (now.startSlot !== slot || now.clinic !== clinic)) cost += weights.moved;
    if (visit === problem.deliveryVisit) cost += (problem.dayOfSlot[slot]! - objective.firstDay) * weights.day;
    values[at] = cost;
  }
  return { slots, values };
}

/** Least cost by slot over several clinicians. */
function joined(lists: readonly Costs[], region: Region, visit: number, states: readonly number[]): Costs {
  if (lists.length === 1) return lists[0]!;
  const words = region.words[visit]!;
  const union = emptyBits(region.starts[visit]![0]!.length << 5);
  for (const state of states) addWords(union, region.starts[visit]![state]!, words);
  const slots = slotsOf(union, words);
  const values = new Float64Array(slots.length).fill(Infinity);
  for (const list of lists) {
    let at = 0;
    for (let index = 0; index < list.slots.length; index++) {
      while (slots[at] !== list.slots[index]) at++;
      if (list.values[index]! < values[at]!) values[at] = list.values[index]!;
    }
  }
  return { slots, values };
}

/**
 * Lowers `out` to the least child cost in each parent start's window: the windows move one way, so a queue of rising
 * costs gives every minimum in amortised constant time.
 *
 * @param threshold buffer that the pair has to keep, in slots, or -Infinity
 */
function slide(
  child: Costs,
  parent: Int32Array,
  piece: Piece,
  childIsEarly: boolean,
  threshold: number,
  extra: number,
  out: Float64Array,
): void {
  const { lo, hi, earliestReturn } = piece;
  const childSide = childIsEarly ? piece.from : piece.to;
  const parentSide = childIsEarly ? piece.to : piece.from;
  const { slots, values } = child;
  const queue = new Int32Array(slots.length);
  let head = 0;
  let tail = 0;
  let next = 0;
  const keepsBuffer = threshold > -Infinity && earliestReturn !== null;
  for (let at = 0; at < parent.length; at++) {
    const slot = parent[at]!;
    if (parentSide !== null && !hasBit(parentSide, slot)) continue;
    const lowest = childIsEarly ? 0 : keepsBuffer ? Math.max(lo[slot]!, earliestReturn[slot]! + threshold) : lo[slot]!;
    const highest = childIsEarly ? 0 : hi[slot]!;
    for (; next < slots.length; next++) {
      const own = slots[next]!;
      if (childIsEarly) {
        if (lo[own]! > slot || (keepsBuffer && earliestReturn[own]! + threshold > slot)) break;
      } else if (own > highest) break;
      if (childSide !== null && !hasBit(childSide, own)) continue;
      while (tail > head && values[queue[tail - 1]!]! >= values[next]!) tail--;
      queue[tail++] = next;
    }
    while (head < tail && (childIsEarly ? hi[slots[queue[head]!]!]! < slot : slots[queue[head]!]! < lowest)) head++;
    if (head < tail) {
      const cost = values[queue[head]!]! + extra;
      if (cost < out[at]!) out[at] = cost;
    }
  }
}

/** Thresholds of a piece with the cost of keeping just this one: nothing for the largest, one more for each larger one. */
function buffers(prepared: PreparedChain, piece: Piece, weight: number): { threshold: number; cost: number }[] {
  const steps = piece.earliestReturn === null ? [] : prepared.problem.placement.bufferSteps;
  return [
    { threshold: -Infinity, cost: steps.length * weight },
    ...steps.map((threshold, index) => ({ threshold, cost: (steps.length - 1 - index) * weight })),
  ];
}

function addMessage(prepared: PreparedChain, region: Region, objective: Objective, link: Link, costs: Costs[][]): void {
  const { weights } = objective;
  const childStates = region.states[link.child]!;
  const childIsEarly = link.child === link.early;
  const byOption = new Map<number, number[]>();
  childStates.forEach(({ option }, state) => {
    if (costs[link.child]![state]!.slots.length > 0) byOption.set(option, [...(byOption.get(option) ?? []), state]);
  });
  const unions = new Map<number, Costs>();
  for (const [option, list] of byOption) {
    unions.set(
      option,
      joined(
        list.map((state) => costs[link.child]![state]!),
        region,
        link.child,
        list,
      ),
    );
  }
  region.states[link.parent]!.forEach((own, state) => {
    const target = costs[link.parent]![state]!;
    if (target.slots.length === 0) return;
    const least = new Float64Array(target.slots.length).fill(Infinity);
    for (const [option, list] of byOption) {
      const moves = childStates[list[0]!]!.clinic === own.clinic ? 0 : weights.clinics;
      const same = list.find((index) => childStates[index]!.clinician === own.clinician);
      const pieces = childIsEarly ? link.pieces(option, own.option) : link.pieces(own.option, option);
      for (const piece of pieces) {
        for (const { threshold, cost } of buffers(prepared, piece, weights.buffer)) {
          if (same !== undefined) {
            slide(costs[link.child]![same]!, target.slots, piece, childIsEarly, threshold, moves + cost, least);
          }
          if (same === undefined || list.length > 1) {
            slide(
              unions.get(option)!,
              target.slots,
              piece,
              childIsEarly,
              threshold,
              moves + weights.clinicians + cost,
              least,
            );
          }
        }
      }
    }
    for (let at = 0; at < least.length; at++) target.values[at]! += least[at]!;
  });
}

/** Thresholds that a pair of starts misses. */
export function missedBuffers(prepared: PreparedChain, piece: Piece, early: number, late: number): number {
  const { earliestReturn } = piece;
  if (earliestReturn === null) return 0;
  return prepared.problem.placement.bufferSteps.filter((step) => late - earliestReturn[early]! < step).length;
}

/** The cheapest child of a fixed parent start, the first one among equals. */
function trace(
  prepared: PreparedChain,
  region: Region,
  objective: Objective,
  link: Link,
  costs: Costs[][],
  witness: Found,
): void {
  const { weights } = objective;
  const own = witness.states[link.parent]!;
  const slot = witness.starts[link.parent]!;
  const childIsEarly = link.child === link.early;
  let least = Infinity;
  region.states[link.child]!.forEach((state, index) => {
    const { slots, values } = costs[link.child]![index]!;
    const change =
      (state.clinic === own.clinic ? 0 : weights.clinics) +
      (state.clinician === own.clinician ? 0 : weights.clinicians);
    const pieces = childIsEarly ? link.pieces(state.option, own.option) : link.pieces(own.option, state.option);
    for (const piece of slots.length === 0 ? [] : pieces) {
      for (let at = 0; at < slots.length; at++) {
        if (values[at]! + change >= least) continue;
        const [early, late] = childIsEarly ? [slots[at]!, slot] : [slot, slots[at]!];
        if (late < piece.lo[early]! || late > piece.hi[early]!) continue;
        if (piece.from !== null && !hasBit(piece.from, early)) continue;
        if (piece.to !== null && !hasBit(piece.to, late)) continue;
        const cost = values[at]! + change + missedBuffers(prepared, piece, early, late) * weights.buffer;
        if (cost >= least) continue;
        least = cost;
        witness.states[link.child] = state;
        witness.starts[link.child] = slots[at]!;
      }
    }
  });
}

/**
 * The cheapest plan of a region, relations off the tree left aside; exact, since every cost hangs on a visit or a link.
 *
 * @returns `null` when the region holds no plan
 */
export function bestOf(prepared: PreparedChain, region: Region, objective: Objective): Best | null {
  const { links, problem } = prepared;
  const { states } = region;
  const costs = states.map((list, visit) =>
    list.map((_, state) => ownCosts(prepared, region, objective, visit, state)),
  );
  for (const link of links) addMessage(prepared, region, objective, link, costs);
  const witness: Found = { states: new Array<State>(states.length), starts: new Int32Array(states.length) };
  let cost = Infinity;
  costs[problem.deliveryVisit]!.forEach(({ slots, values }, state) => {
    for (let at = 0; at < slots.length; at++) {
      if (values[at]! >= cost) continue;
      cost = values[at]!;
      witness.states[problem.deliveryVisit] = states[problem.deliveryVisit]![state]!;
      witness.starts[problem.deliveryVisit] = slots[at]!;
    }
  });
  if (cost === Infinity) return null;
  for (let link = links.length - 1; link >= 0; link--) trace(prepared, region, objective, links[link]!, costs, witness);
  return { ...witness, cost };
}
