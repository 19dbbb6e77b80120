import { cellOf, covered } from './cells.js';
import { layersOf, type Layers } from './layers.js';
import type { ChainVector } from './model.js';
import type { PreparedChain } from './prepare.js';
import { byVector, vectorsOf, witnessOf, type Reached } from './reached.js';
import { firstStart, shrink, split, type Region } from './region.js';

/** Regions still to be looked at, the one with the earliest delivery first: its vectors cover what others hold. */
class Open {
  private readonly byFallingDay: { readonly region: Region; readonly day: number }[] = [];

  constructor(private readonly prepared: PreparedChain) {}

  push(region: Region): void {
    const { dayOfSlot, deliveryVisit } = this.prepared.problem;
    const day = dayOfSlot[firstStart(region, deliveryVisit)]!;
    const later = this.byFallingDay.findIndex((other) => other.day <= day);
    this.byFallingDay.splice(later < 0 ? this.byFallingDay.length : later, 0, { region, day });
  }

  pop() {
    return this.byFallingDay.pop();
  }
}

/**
 * The Pareto front of a problem.
 *
 * Regions whose witnesses break a relation off the tree are split until none does; a region is left as soon as known
 * vectors cover all that it could give.
 *
 * @param whole the whole search space, shrunk
 */
export function frontOf(prepared: PreparedChain, whole: readonly Region[]): ChainVector[] {
  const open = new Open(prepared);
  for (const region of whole) open.push(region);
  const known: ChainVector[] = [];
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    const { region, day } = next;
    if (covered(known, day, 0)) continue;
    for (const part of partsOf(prepared, region, known)) {
      const shrunk = shrink(prepared, part);
      if (shrunk !== null) open.push(shrunk);
    }
  }
  known.sort(byVector);
  return known.filter(
    (vector, index) =>
      !covered(
        known.filter((_, other) => other !== index),
        vector.deliveryDay,
        cellOf(vector),
      ),
  );
}

/**
 * Adds the vectors of a region to the known ones, up to the first whose witness breaks a relation off the tree.
 *
 * @returns the parts into which that witness splits the region; none when all vectors are known
 */
function partsOf(prepared: PreparedChain, region: Region, known: ChainVector[]): readonly Region[] {
  return prepared.pool.scoped(() => {
    const layers = layersOf(prepared, region, known);
    for (const reached of vectorsOf(prepared, layers)) {
      if (covered(known, reached.vector.deliveryDay, reached.cell)) continue;
      const parts = splitAt(prepared, region, layers, reached);
      if (parts !== null) return parts;
      known.push(reached.vector);
    }
    return [];
  });
}

/** The parts into which a witness of a vector splits a region; `null` when there is one that keeps every relation. */
function splitAt(prepared: PreparedChain, region: Region, layers: Layers, reached: Reached): readonly Region[] | null {
  if (prepared.others.length === 0) return null;
  const parts = split(prepared, region, witnessOf(prepared, region, layers, reached, false));
  if (parts === null) return null;
  // Splitting costs as much as all that was done so far; another witness costs next to nothing.
  return split(prepared, region, witnessOf(prepared, region, layers, reached, true)) === null ? null : parts;
}
