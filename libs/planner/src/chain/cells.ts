import { addWords, hasBit, writeCommon, writeRest, type Words } from './bits.js';
import type { BitsPool } from './bits-pool.js';
import type { ChainVector, SlotBits } from './model.js';
import type { PreparedChain } from './prepare.js';
import type { Region } from './region.js';

/** Start sets by cell of (wishes broken, clinician changes, clinic changes), absent when empty. */
export type Cells = Map<number, SlotBits>;

/** Packs the three counts of a cell; each stays below 64, so that sums never carry over. */
export const CLINICIAN = 1 << 6;
export const CLINIC = 1 << 12;

export function cellOf({ wishesBroken, clinicianChanges, clinicChanges }: ChainVector): number {
  return wishesBroken + clinicianChanges * CLINICIAN + clinicChanges * CLINIC;
}

export function vectorOf(cell: number, deliveryDay: number): ChainVector {
  return {
    deliveryDay,
    wishesBroken: cell & 63,
    clinicianChanges: (cell >> 6) & 63,
    clinicChanges: cell >> 12,
  };
}

/** Whether no count of `left` is above the same one of `right`. */
export function isWithin(left: number, right: number): boolean {
  return (left & 63) <= (right & 63) && ((left >> 6) & 63) <= ((right >> 6) & 63) && left >> 12 <= right >> 12;
}

/** Adds starts to a cell; they become the cell's own when it is new. */
export function addTo(cells: Cells, cell: number, bits: SlotBits, words: Words): void {
  const known = cells.get(cell);
  if (known === undefined) cells.set(cell, bits);
  else addWords(known, bits, words);
}

/**
 * Adds what two sets have in common to a cell.
 *
 * @param spare a set without a bit outside `words`; it becomes the cell's own when the cell is new
 * @returns the spare set of the next call
 */
export function addCommon(
  cells: Cells,
  cell: number,
  left: SlotBits,
  right: SlotBits,
  words: Words,
  spare: SlotBits,
  pool: BitsPool,
): SlotBits {
  if (!writeCommon(spare, left, right, words)) return spare;
  const known = cells.get(cell);
  if (known === undefined) {
    cells.set(cell, spare);
    return pool.take();
  }
  addWords(known, spare, words);
  return spare;
}

/** Drops starts that another cell holds with no count higher. */
export function prune(cells: Cells, words: Words): Cells {
  if (cells.size < 2) return cells;
  const order = [...cells.keys()].sort((a, b) => a - b);
  for (let at = 1; at < order.length; at++) {
    const cell = order[at]!;
    const bits = cells.get(cell)!;
    // A cell within this one has a smaller number, and has been pruned itself.
    for (let before = 0; before < at; before++) {
      const better = isWithin(order[before]!, cell) ? cells.get(order[before]!) : undefined;
      if (better === undefined || writeRest(bits, bits, better, words)) continue;
      cells.delete(cell);
      break;
    }
  }
  return cells;
}

/** `true` when a known vector is nowhere above. */
export function covered(known: readonly ChainVector[], day: number, cell: number): boolean {
  for (const vector of known) {
    if (vector.deliveryDay <= day && isWithin(cellOf(vector), cell)) return true;
  }
  return false;
}

/** Starts of one state by what they cost for themselves. */
export function ownCells({ problem, pool }: PreparedChain, region: Region, visit: number, state: number): Cells {
  const { clinic, clinician } = region.states[visit]![state]!;
  const bits = region.starts[visit]![state]!;
  const { wished } = problem.visits[visit]!;
  let base = 0;
  if (visit === 0 && problem.seenBy !== null) {
    if (problem.seenBy.clinician !== clinician) base += CLINICIAN;
    if (problem.seenBy.clinic !== clinic) base += CLINIC;
  }
  const cells: Cells = new Map();
  const words = region.words[visit]!;
  const kept = pool.take();
  if (writeCommon(kept, bits, wished ?? bits, words)) cells.set(base, kept);
  if (wished !== null) {
    const broken = pool.take();
    if (writeRest(broken, bits, wished, words)) cells.set(base + 1, broken);
  }
  return cells;
}

/** Whether a start is in a cell. */
export function holds(cells: Cells, cell: number, slot: number): boolean {
  const bits = cells.get(cell);
  return bits !== undefined && hasBit(bits, slot);
}
