import { seededRandom, type SeededRandom } from '@archwright/kernel';
import { givenUp, planned, type Draft, type JointPlanner } from './draft.js';
import { costOf, isLess } from './joint-cost.js';

/** Most cases that are taken out and planned again at once. */
const MOST_TAKEN_OUT = 4;

/**
 * Plans some of the broken cases again, beside each other in another order, and keeps what is better: a case that was
 * planned early may have taken the only time that suits another. Who finds no plan stays booked where they are, so that
 * their time is given to nobody. A function of question, seed and rounds.
 *
 * @param isGoodEnough ends the search, such as when a bound is met
 */
export function searchNeighbourhood(
  planner: JointPlanner,
  start: Draft,
  { seed, rounds }: { readonly seed: number; readonly rounds: number },
  isGoodEnough: (draft: Draft) => boolean,
): Draft {
  const { question } = planner;
  const keys = question.broken.map(({ key }) => key);
  if (keys.length < 2) return start;
  const random = seededRandom(seed);
  let best = start;
  for (let round = 0; round < rounds && !isGoodEnough(best); round++) {
    const again = inAnyOrder(keys, random).slice(0, 2 + random.nextBelow(MOST_TAKEN_OUT - 1));
    const trial = plannedAgain(planner, best, again);
    if (trial !== null && isLess(costOf(trial, question), costOf(best, question))) best = trial;
  }
  return best;
}

/** The draft with these cases planned one after the other; `null` when one that had a plan is left without. */
function plannedAgain(planner: JointPlanner, draft: Draft, keys: readonly string[]): Draft | null {
  const hadPlan = keys.filter((key) => draft.changes.has(key));
  let trial = givenUp(draft, hadPlan);
  for (const key of keys) {
    const change = planner.change(key, trial);
    if (change !== null) trial = planned(trial, key, change);
    else if (hadPlan.includes(key)) return null;
  }
  return trial;
}

function inAnyOrder(keys: readonly string[], random: SeededRandom): string[] {
  const order = [...keys];
  for (let at = order.length - 1; at > 0; at--) {
    const other = random.nextBelow(at + 1);
    [order[at], order[other]] = [order[other]!, order[at]!];
  }
  return order;
}
