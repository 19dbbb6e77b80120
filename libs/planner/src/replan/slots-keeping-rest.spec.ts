import { seededRandom } from '@archwright/kernel';
import { Twin } from '../chain/exhaustive.twin.js';
import { planOffers } from '../chain/offers.js';
import { FAMILIES, tinyProblem } from '../chain/tiny-problem.twin.js';
import { slotsKeepingRest } from './slots-keeping-rest.js';

const CASES = 40;

describe('slotsKeepingRest', () => {
  it.each(FAMILIES)('finds exactly the starts that an exhaustive search finds: %s', (family) => {
    let compared = 0;
    for (let index = 0; index < CASES; index++) {
      const problem = tinyProblem(seededRandom(20260611, index), family);
      const plans = new Twin(problem).plans();
      if (plans === null || plans.length === 0) continue;
      const [booked] = planOffers(problem, 1).offers;
      const current = booked!.visits.map(({ startSlot, clinic }) => ({ startSlot, clinic }));
      problem.visits.forEach((_, visit) => {
        const expected = plans
          .filter(({ visits }) =>
            visits.every((each, at) => {
              const now = current[at]!;
              return at === visit || (each.start === now.startSlot && each.clinic === now.clinic);
            }),
          )
          .map(({ visits }) => `${String(visits[visit]!.start)} ${visits[visit]!.clinic} ${visits[visit]!.clinician}`);
        const found = slotsKeepingRest(problem, current, visit, Infinity);
        expect(found.map((each) => `${String(each.startSlot)} ${each.clinic} ${each.clinician}`).sort()).toEqual(
          [...new Set(expected)].sort(),
        );
        compared++;
      });
    }
    expect(compared).toBeGreaterThan(0);
  });

  it('ends with the last start that was asked for', () => {
    for (let index = 0; ; index++) {
      const problem = tinyProblem(seededRandom(7, index), 'plain-waits');
      const free = problem.visits.map(() => null);
      const all = slotsKeepingRest(problem, free, 0, Infinity);
      if (all.length < 2) continue;
      expect(slotsKeepingRest(problem, free, 0, 1)).toEqual(all.slice(0, 1));
      break;
    }
  });
});
