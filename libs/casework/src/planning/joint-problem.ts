import { withHeld, type ChainCache, type ChainProblem, type HeldTime } from '@archwright/planner';
import type { PlanningAxis } from '@archwright/protocol';
import type { ResourceTimes } from './snapshot-changes.js';

/** The same time in slots, rounded outward. */
export function toHeldTime(times: ResourceTimes, axis: Pick<PlanningAxis, 'slotFrom' | 'slotUntil'>): HeldTime {
  return new Map(
    [...times].map(([id, intervals]) => [
      id,
      intervals.map(({ startMs, endMs }) => ({ startSlot: axis.slotUntil(startMs), endSlot: axis.slotFrom(endMs) })),
    ]),
  );
}

/** A case's problem when all other cases keep what they hold. */
export function besideOthers(
  problem: ChainProblem,
  caseId: string,
  held: ReadonlyMap<string, HeldTime>,
  cache: ChainCache,
): ChainProblem {
  return withHeld(
    problem,
    [...held].filter(([other]) => other !== caseId).map(([, times]) => times),
    cache,
  );
}
