import type { ShopGraph } from './shop-graph.js';
import type { TabuList } from './tabu-list.js';

/*
 * Whether a move along one machine is allowed, and the longest way through what it touches (heads and tails of the
 * moved stretch only, after Balas & Vazacopoulos 1998). The true makespan can be larger where a critical way avoids the
 * stretch, which is why a move is judged by this figure but a plan never is.
 */

/** No way may lead from the job's next operation to `target`. With durations of 0, equal tails prove nothing. */
export function mayMoveAfter({ tail, duration }: ShopGraph, id: number, target: number): boolean {
  const next = id + 1;
  if (tail[target]! > tail[next]!) return true;
  return tail[target] === tail[next] && duration[next]! > 0 && next !== target;
}

/** No way may lead from `target` to the job's previous operation. */
export function mayMoveBefore({ end, duration }: ShopGraph, id: number, target: number): boolean {
  const previous = id - 1;
  if (end[target]! > end[previous]!) return true;
  return end[target] === end[previous] && duration[previous]! > 0 && previous !== target;
}

/** @param scratch room for the ends of as many operations as the stretch has */
export function estimateAfter(graph: ShopGraph, id: number, target: number, scratch: Int32Array): number {
  const { end, tail, duration, before, after } = graph;
  let reached = end[before[id]!]!;
  let count = 0;
  for (let other = after[id]!; ; other = after[other]!) {
    const ofJob = end[other - 1]!;
    reached = (ofJob > reached ? ofJob : reached) + duration[other]!;
    scratch[count++] = reached;
    if (other === target) break;
  }
  const own = duration[id]!;
  const start = Math.max(end[id - 1]!, reached);
  let left = Math.max(tail[id + 1]!, tail[after[target]!]!) + own;
  let longest = start + left;
  for (let other = target; count > 0; other = before[other]!) {
    const ofJob = tail[other + 1]!;
    if (ofJob > left) left = ofJob;
    const through = scratch[--count]! + left;
    if (through > longest) longest = through;
    left += duration[other]!;
  }
  return longest;
}

/** @param scratch room for the tails of as many operations as the stretch has */
export function estimateBefore(graph: ShopGraph, id: number, target: number, scratch: Int32Array): number {
  const { end, tail, duration, before, after } = graph;
  let left = tail[after[id]!]!;
  let count = 0;
  for (let other = before[id]!; ; other = before[other]!) {
    const ofJob = tail[other + 1]!;
    left = (ofJob > left ? ofJob : left) + duration[other]!;
    scratch[count++] = left;
    if (other === target) break;
  }
  const rest = Math.max(tail[id + 1]!, left);
  let reached = Math.max(end[id - 1]!, end[before[target]!]!) + duration[id]!;
  let longest = reached + rest;
  for (let other = target; count > 0; other = after[other]!) {
    const ofJob = end[other - 1]!;
    if (ofJob > reached) reached = ofJob;
    const through = reached + scratch[--count]!;
    if (through > longest) longest = through;
    reached += duration[other]!;
  }
  return longest;
}

/** Forbidden when any order that the move makes is. */
export function isAfterForbidden(graph: ShopGraph, tabu: TabuList, id: number, target: number, move: number): boolean {
  for (let other = graph.after[id]!; ; other = graph.after[other]!) {
    if (tabu.isOrderForbidden(other, id, move)) return true;
    if (other === target) return false;
  }
}

export function isBeforeForbidden(graph: ShopGraph, tabu: TabuList, id: number, target: number, move: number): boolean {
  for (let other = graph.before[id]!; ; other = graph.before[other]!) {
    if (tabu.isOrderForbidden(id, other, move)) return true;
    if (other === target) return false;
  }
}
