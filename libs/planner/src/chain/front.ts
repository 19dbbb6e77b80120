import type { ChainVector } from './model.js';
import { byVector, covered, layersOf, vectorsOf, witnessOf } from './cells.js';
import type { PreparedChain } from './prepare.js';
import { firstStart, shrink, split, wholeRegions, type Region } from './region.js';

function cellOf({ wishesBroken, clinicianChanges, clinicChanges }: ChainVector): number {
  return wishesBroken | (clinicianChanges << 6) | (clinicChanges << 12);
}

/**
 * The Pareto front of a problem.
 *
 * Regions whose witnesses break a relation off the tree are split until none does; a region is left as soon as known
 * vectors cover all that it could give.
 */
export function frontOf(prepared: PreparedChain): ChainVector[] {
  const { problem } = prepared;
  // By falling day, and the last one is taken first: an early vector covers what later regions would be split for.
  const open: { region: Region; day: number }[] = [];
  const push = (region: Region): void => {
    const shrunk = shrink(prepared, region);
    if (shrunk === null) return;
    const day = problem.dayOfSlot[firstStart(shrunk, problem.deliveryVisit)]!;
    const later = open.findIndex((other) => other.day <= day);
    open.splice(later < 0 ? open.length : later, 0, { region: shrunk, day });
  };
  for (const region of wholeRegions(prepared)) push(region);
  const known: ChainVector[] = [];
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    const { region, day } = next;
    if (covered(known, day, 0)) continue;
    const layers = layersOf(prepared, region, known, day);
    for (const reached of vectorsOf(prepared, layers)) {
      if (covered(known, reached.vector.deliveryDay, reached.cell)) continue;
      const parts =
        prepared.others.length === 0 ? null : split(prepared, region, witnessOf(prepared, region, layers, reached));
      if (parts === null) {
        known.push(reached.vector);
        continue;
      }
      for (const part of parts) push(part);
      break;
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
