import { seededRandom, type SeededRandom } from '@archwright/kernel';
import { givenUp, planned, type Draft, type JointPlanner } from './draft.js';
import { costOf, isLess } from './joint-cost.js';

/** Most cases that are taken out and planned again at once. */
const MOST_TAKEN_OUT = 4;

/**
 * Plans some of the broken cases again, beside each other in another order, and keeps what is better: a case that was
 * planned early may have taken the only time that suits another. A function of question, seed and rounds.
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
    const trial = again.reduce(
      (draft, key) => {
        const change = planner.change(key, draft);
        return change === null ? draft : planned(draft, key, change);
      },
      givenUp(best, again),
    );
    if (isLess(costOf(trial, question), costOf(best, question))) best = trial;
  }
  return best;
}

function inAnyOrder(keys: readonly string[], random: SeededRandom): string[] {
  const order = [...keys];
  for (let at = order.length - 1; at > 0; at--) {
    const other = random.nextBelow(at + 1);
    [order[at], order[other]] = [order[other]!, order[at]!];
  }
  return order;
}
