import type { Draft, JointQuestion } from './draft.js';
import type { JointCase } from './joint-case.js';

/** Broken cases without a plan, moved visits, other cases touched, slots by which visits move: compared in this order. */
export type JointCost = readonly [unplanned: number, moved: number, touched: number, shift: number];

export function costOf({ changes }: Draft, { broken, neighbours }: JointQuestion): JointCost {
  const unplanned = broken.filter(({ key }) => !changes.has(key)).length;
  let moved = 0;
  let shift = 0;
  for (const { key, visits } of [...broken, ...neighbours]) {
    const change = changes.get(key);
    if (change === undefined) continue;
    moved += change.plan.movedVisits;
    shift += shiftOf({ visits }, change.plan.visits);
  }
  const touched = neighbours.filter(({ key }) => changes.has(key)).length;
  return [unplanned, moved, touched, shift];
}

function shiftOf({ visits }: Pick<JointCase, 'visits'>, planned: readonly { readonly startSlot: number }[]): number {
  return visits.reduce((sum, now, index) => {
    const then = planned[index];
    return now === null || then === undefined ? sum : sum + Math.abs(then.startSlot - now.startSlot);
  }, 0);
}

export function isLess(one: JointCost, other: JointCost): boolean {
  const at = one.findIndex((cost, axis) => cost !== other[axis]);
  return at >= 0 && one[at]! < other[at]!;
}
