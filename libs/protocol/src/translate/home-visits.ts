import type { Interval } from '@archwright/calendar';
import type { ArcTables } from '@archwright/planner';
import { SLOT_MINUTES, type PlanningAxis } from './axis.js';

/**
 * A visit at the patient's home takes the clinician from leaving the clinic until being back: the planner places that whole
 * block, and work goes out and comes in with it. The patient, and every wait between visits, is concerned with the visit alone.
 */
export interface MaybeAtHome {
  /** The clinician's way, each way, in minutes; null for a visit at the clinic. */
  readonly homeTravelMinutes: number | null;
}

/** The way on the planner's grid. */
export const waySlots = ({ homeTravelMinutes }: MaybeAtHome): number =>
  Math.ceil((homeTravelMinutes ?? 0) / SLOT_MINUTES);

export const wayMs = (visit: MaybeAtHome): number => waySlots(visit) * SLOT_MINUTES * 60_000;

/** The time that a visit takes of those who treat: the visit, and the way to the patient and back. */
export function timeTaken(visit: Interval & MaybeAtHome): Interval {
  const way = wayMs(visit);
  return { startMs: visit.startMs - way, endMs: visit.endMs + way };
}

/** Slots of the way back from the first visit, and of the way to the second. */
interface Ways {
  readonly after: number;
  readonly before: number;
}

/**
 * Limits between two visits as limits between their blocks: from the end of the first block, whose visit ended `after` slots
 * earlier, to the start of the second, whose visit starts `before` slots later.
 */
export function betweenBlocks(axis: PlanningAxis, { lo, hi }: ArcTables, ways: Ways): ArcTables {
  if (ways.after === 0 && ways.before === 0) return { lo, hi };
  const moved = (table: Int32Array, least: number) =>
    axis.onceOf(table, `between blocks ${JSON.stringify(ways)} ${String(least)}`, () => shifted(table, ways, least));
  return { lo: lo === null ? null : moved(lo, 0), hi: hi === null ? null : moved(hi, -1) };
}

/** A bound at the end of the axis stays there: it says "never", or "at any time". */
function shifted(table: Int32Array, { after, before }: Ways, least: number): Int32Array {
  const count = table.length - 1;
  return table.map((_, end) => {
    const slot = table[Math.max(0, end - after)] ?? count;
    return slot >= count - 1 ? slot : Math.max(least, slot - before);
  });
}

/** Starts of visits as starts of their blocks. */
export function leavingFor(starts: Uint32Array, way: number): Uint32Array {
  if (way === 0) return starts;
  const [words, bits] = [way >>> 5, way & 31];
  return starts.map((_, index) => {
    const low = starts[index + words] ?? 0;
    const high = starts[index + words + 1] ?? 0;
    return bits === 0 ? low : (low >>> bits) | (high << (32 - bits));
  });
}
