import { seededRandom, type SeededRandom } from '@archwright/kernel';
import { givenUp, planned, type Draft, type JointPlanner } from './draft.js';
import { overlap } from './ejection.js';
import { timeOf } from './held-time.js';
import type { MovedPlan } from './replan-chain.js';

/** Most cases that are taken out and planned again at once. */
const MOST_TAKEN_OUT = 4;

/**
 * Plans some of the broken cases again, beside each other in another order, and keeps what moves fewer visits: a case that
 * was planned early may have taken the only time that suits another. A function of question, seed and rounds.
 *
 * A round begins with a case that moves more than it would beside the others who stay, and takes out who is in its way; the
 * search ends where there is no such case, since no order is better then.
 *
 * @param leastOf moves that a case needs whatever the other broken cases do; a weak one only costs time
 */
export function searchNeighbourhood(
  planner: JointPlanner,
  start: Draft,
  { seed, rounds }: { readonly seed: number; readonly rounds: number },
  leastOf: (key: string) => number | null,
): Draft {
  const keys = planner.question.broken.map(({ key }) => key);
  if (keys.length < 2) return start;
  const wishes = new Wishes(planner, givenUp(start, keys));
  const random = seededRandom(seed);
  let best = start;
  let tried = new Set<string>();
  for (let round = 0; round < rounds; round++) {
    const gaining = keys.filter((key) => {
      const moved = movedOf(best, key);
      return moved > 0 && moved !== leastOf(key) && moved > wishes.movedOf(key);
    });
    const first = gaining[random.nextBelow(Math.max(1, gaining.length))];
    if (first === undefined) break;
    const inTheWay = wishes.inTheWayOf(first, best);
    const rest = keys.filter((key) => key !== first && !inTheWay.includes(key) && wishes.movedOf(key) < Infinity);
    const others = [...inAnyOrder(inTheWay, random), ...inAnyOrder(rest, random)];
    const again = [first, ...others.slice(0, 1 + random.nextBelow(MOST_TAKEN_OUT - 1))];
    const order = again.join(' ');
    if (tried.has(order)) continue;
    tried.add(order);
    const trial = withFewer(planner, best, again, wishes);
    if (trial === null) continue;
    best = trial;
    tried = new Set();
  }
  return best;
}

/** Visits that a case moves; without a plan it is worse off than with any. */
const movedOf = ({ changes }: Draft, key: string): number => changes.get(key)?.plan.movedVisits ?? Infinity;

/** The draft with some cases planned anew in this order, or `null` as soon as it is sure not to be better. */
function withFewer(planner: JointPlanner, best: Draft, again: readonly string[], wishes: Wishes): Draft | null {
  // A plan for a case that has none is worth any number of moves.
  const isForAll = again.every((key) => best.changes.has(key));
  let left = isForAll ? again.reduce((sum, key) => sum + movedOf(best, key) - wishes.movedOf(key), 0) - 1 : Infinity;
  let draft = givenUp(best, again);
  for (const key of again) {
    if (left < 0) return null;
    const change = planner.change(key, draft, wishes.movedOf(key) + left);
    // Who has no plan keeps what it has booked, which others may have taken by now.
    if (change === null) return null;
    left -= change.plan.movedVisits - wishes.movedOf(key);
    draft = planned(draft, key, change);
  }
  return draft;
}

/** Each broken case's plan with the fewest moves while no other broken case holds anything. */
class Wishes {
  private readonly known = new Map<string, MovedPlan | null>();

  constructor(
    private readonly planner: JointPlanner,
    private readonly others: Draft,
  ) {}

  /** No draft in which only broken cases are planned again moves fewer visits of this one; infinite when none has a plan of it. */
  movedOf(key: string): number {
    return this.of(key)?.movedVisits ?? Infinity;
  }

  /** Broken cases that hold what it would take, as they are planned now. */
  inTheWayOf(key: string, { held }: Draft): string[] {
    const plan = this.of(key);
    if (plan === null) return [];
    const wanted = timeOf(plan);
    return this.planner.question.broken.flatMap(({ key: other }) =>
      other !== key && overlap(wanted, held.get(other) ?? new Map()) ? [other] : [],
    );
  }

  private of(key: string): MovedPlan | null {
    let plan = this.known.get(key);
    if (plan === undefined) {
      plan = this.planner.fewestMoves(key, this.others);
      this.known.set(key, plan);
    }
    return plan;
  }
}

export function inAnyOrder(keys: readonly string[], random: SeededRandom): string[] {
  const order = [...keys];
  for (let at = order.length - 1; at > 0; at--) {
    const other = random.nextBelow(at + 1);
    [order[at], order[other]] = [order[other]!, order[at]!];
  }
  return order;
}
