import type { ChainCache } from './cache.js';
import type { ArcTables } from './model.js';

interface AnchoredArc extends ArcTables {
  readonly anchor: 'start' | 'end';
  readonly byClinic: ReadonlyMap<string, ArcTables> | null;
}

/** The tables that hold in a clinic. */
export function tablesIn(arc: AnchoredArc, clinic: string | null): ArcTables {
  return (clinic === null ? undefined : arc.byClinic?.get(clinic)) ?? arc;
}

/**
 * Tables by start slot of the origin.
 *
 * @param end end slot by start slot; above `slotCount` where the origin does not fit
 */
export function byStart(
  tables: ArcTables,
  anchor: 'start' | 'end',
  end: Int32Array | null,
  slotCount: number,
): { lo: Int32Array | null; hi: Int32Array | null } {
  if (anchor === 'start' || end === null) {
    return { lo: tables.lo?.subarray(0, slotCount) ?? null, hi: tables.hi?.subarray(0, slotCount) ?? null };
  }
  const look = (table: Int32Array | null, outside: number): Int32Array | null => {
    if (table === null) return null;
    const out = new Int32Array(slotCount);
    for (let start = 0; start < slotCount; start++) {
      out[start] = end[start]! > slotCount ? outside : table[end[start]!]!;
    }
    return out;
  };
  return { lo: look(tables.lo, slotCount), hi: look(tables.hi, slotCount - 1) };
}

/** End slot by start slot of a visit of fixed length. */
export function visitEnds(lengthSlots: number, slotCount: number): Int32Array {
  const end = new Int32Array(slotCount);
  for (let start = 0; start < slotCount; start++) end[start] = start + lengthSlots;
  return end;
}

/** Whether the target never starts before the anchor slot. */
export function delays(tables: ArcTables, cache: ChainCache): boolean {
  const { lo } = tables;
  if (lo === null) return false;
  return cache.get(`delays:${String(cache.id(lo))}`, () => {
    for (let anchor = 0; anchor < lo.length; anchor++) if (lo[anchor]! < anchor) return false;
    return true;
  });
}
