import type { JointRepair, RepairsFound } from './search-repair.js';

const visits = (count: number): string => (count === 1 ? '1 visit moves' : `${String(count)} visits move`);

/** What a proposal does, for a person who compares it with others. */
export function labelOf({ aim, rung, movedVisits }: JointRepair, otherCases: number): string {
  if (aim === 'earliest') return `Earliest placements: ${visits(movedVisits)}`;
  if (aim === 'as-wished') return `Closest to the wishes: ${visits(movedVisits)}`;
  if (movedVisits > 0) {
    const room = otherCases === 1 ? ', one other case makes room' : `, ${String(otherCases)} other cases make room`;
    return `Fewest moves: ${visits(movedVisits)}${otherCases === 0 ? '' : room}`;
  }
  if (rung === 'kept') return 'No visit moves: somebody or something else serves';
  return rung === 'absorbed'
    ? 'No visit moves: the work has time enough'
    : 'No visit moves: the work is put in another order';
}

export function whyNone(left: RepairsFound['left']): string {
  if (left.length === 0) return 'Nothing that is booked or planned rests on it, so that nothing has to move.';
  const cases = left.length === 1 ? 'the affected case' : `any of the ${String(left.length)} affected cases`;
  const others = left.every(({ isImpossible }) => isImpossible)
    ? 'even if every other case made room'
    : 'though other cases were asked to make room';
  return `No plan is left for ${cases} within the waits that the treatment allows, ${others}. Allow a longer wait or another clinician, or move visits by hand.`;
}
