import { seededRandom } from '@archwright/kernel';
import { Twin, type TwinPlan } from '../chain/exhaustive.twin.js';
import { planOffers } from '../chain/offers.js';
import { FAMILIES, tinyProblem } from '../chain/tiny-problem.twin.js';
import type { CurrentVisit } from './replan-chain.js';
import { pullForward, type FreedTime } from './pull-forward.js';

const CASES = 30;

/** Delivery day and moved visits of the best plan that uses the freed time, by trying all of them. */
function bestOf(plans: readonly TwinPlan[], current: readonly CurrentVisit[], freed: FreedTime): number[] | null {
  const figures = plans
    .filter(({ visits }) =>
      visits.some(
        ({ clinic, clinician, start, end }, at) =>
          current[at]!.startSlot > freed.startSlot &&
          clinic === freed.clinic &&
          clinician === freed.clinician &&
          start >= freed.startSlot &&
          end <= freed.endSlot,
      ),
    )
    .map(({ visits, vector: [day] }) => [
      day,
      visits.filter(({ start, clinic }, at) => start !== current[at]!.startSlot || clinic !== current[at]!.clinic)
        .length,
    ])
    .sort((a, b) => a[0]! - b[0]! || a[1]! - b[1]!);
  return figures[0] ?? null;
}

describe('pullForward', () => {
  it.each(FAMILIES)('finds the best use of freed time that an exhaustive search finds: %s', (family) => {
    const random = seededRandom(20260701);
    let used = 0;
    for (let index = 0; index < CASES; index++) {
      const problem = tinyProblem(seededRandom(20260702, index), family);
      const plans = new Twin(problem).plans();
      if (plans === null || plans.length === 0) continue;
      const booked = planOffers(problem, 4).offers.at(-1)!;
      const current = booked.visits.map(({ startSlot, clinic }) => ({ startSlot, clinic }));
      const startSlot = random.nextBelow(problem.slotCount - 3);
      const { clinic, clinicians } = problem.visits[0]!.options[0]!;
      const freed = { clinic, clinician: clinicians[0]!.key, startSlot, endSlot: startSlot + 3 };
      const found = pullForward(problem, current, freed);
      const figures = found === null ? null : [found.plan.vector.deliveryDay, found.plan.movedVisits];
      expect(figures).toEqual(bestOf(plans, current, freed));
      if (found !== null) {
        const visit = found.plan.visits[found.visit]!;
        expect(visit.startSlot).toBeGreaterThanOrEqual(freed.startSlot);
        expect(visit.endSlot).toBeLessThanOrEqual(freed.endSlot);
        used++;
      }
    }
    expect(used).toBeGreaterThan(0);
  });
});
