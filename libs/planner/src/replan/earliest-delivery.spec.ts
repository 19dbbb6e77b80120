import { seededRandom } from '@archwright/kernel';
import { Twin } from '../chain/exhaustive.twin.js';
import { FAMILIES, tinyProblem } from '../chain/tiny-problem.twin.js';
import { earliestDelivery } from './earliest-delivery.js';

const CASES = 40;

describe('earliestDelivery', () => {
  it.each(FAMILIES)('is the day that an exhaustive search finds, or null when it finds none: %s', (family) => {
    let compared = 0;
    for (let index = 0; index < CASES; index++) {
      const problem = tinyProblem(seededRandom(20260612, index), family);
      const plans = new Twin(problem).plans();
      if (plans === null) continue;
      const days = plans.map(({ vector: [day] }) => day);
      expect(earliestDelivery(problem)).toBe(days.length === 0 ? null : Math.min(...days));
      compared++;
    }
    expect(compared).toBeGreaterThan(0);
  });
});
