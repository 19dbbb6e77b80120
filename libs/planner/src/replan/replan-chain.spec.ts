import { seededRandom } from '@archwright/kernel';
import { Twin } from '../chain/exhaustive.twin.js';
import { planOffers } from '../chain/offers.js';
import { FAMILIES, tinyProblem } from '../chain/tiny-problem.twin.js';
import { replanChain, type ReplanAim } from './replan-chain.js';

const CASES = 30;
const AIMS: readonly ReplanAim[] = ['fewest-moves', 'earliest', 'as-wished'];

interface Figures {
  readonly moved: number;
  readonly day: number;
  readonly wishes: number;
}

/** The figures of a plan in the order in which the aim counts them. */
function inOrder(aim: ReplanAim, { moved, day, wishes }: Figures): number[] {
  const orders = {
    'fewest-moves': [moved, day, wishes],
    earliest: [day, moved, wishes],
    'as-wished': [wishes, moved, day],
  };
  return orders[aim];
}
const compare = (one: readonly number[], other: readonly number[]): number => {
  const at = one.findIndex((figure, index) => figure !== other[index]);
  return at < 0 ? 0 : one[at]! - other[at]!;
};

describe('replanChain', () => {
  it.each(FAMILIES)('is the least for each aim that an exhaustive search finds: %s', (family) => {
    let compared = 0;
    for (let index = 0; index < CASES; index++) {
      const problem = tinyProblem(seededRandom(20260613, index), family);
      const plans = new Twin(problem).plans();
      if (plans === null || plans.length === 0) continue;
      // Booked is the last of the offers, so that the best plan is seldom the present one.
      const booked = planOffers(problem, 3).offers.at(-1)!;
      const current = booked.visits.map(({ startSlot, clinic }) => ({ startSlot, clinic }));
      for (const aim of AIMS) {
        const all = plans.map(({ visits, vector: [day, wishes] }) => {
          const moved = visits.filter(
            (visit, at) => visit.start !== current[at]!.startSlot || visit.clinic !== current[at]!.clinic,
          ).length;
          return inOrder(aim, { moved, day, wishes });
        });
        const least = all.reduce((best, each) => (compare(each, best) < 0 ? each : best));
        const [found] = replanChain(problem, current, aim, 1);
        const { deliveryDay: day, wishesBroken: wishes } = found!.vector;
        expect(inOrder(aim, { moved: found!.movedVisits, day, wishes })).toEqual(least);
        compared++;
      }
    }
    expect(compared).toBeGreaterThan(0);
  });
});
