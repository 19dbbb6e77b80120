import { seededRandom } from '@archwright/kernel';
import { shortestShop } from './exhaustive.twin.js';
import type { MachineShop } from './machine-shop.js';
import { ShopSearch } from './search-shop.js';
import { shopFaults } from './verify-shop.js';

const CASES = 300;
const EPOCHS = 12;

/** Up to three jobs of up to three operations; some machines come twice in a job, some durations are 0. */
function tinyShop(index: number): MachineShop {
  const random = seededRandom(20270104, index);
  const machineCount = 1 + random.nextBelow(3);
  const isFlexible = index % 2 === 1;
  const jobs = Array.from({ length: 1 + random.nextBelow(3) }, () =>
    Array.from({ length: random.nextBelow(4) }, () => {
      const first = random.nextBelow(machineCount);
      const choices = [{ machine: first, duration: random.nextBelow(8) }];
      if (isFlexible && machineCount > 1 && random.nextBelow(2) === 0) {
        choices.push({ machine: (first + 1) % machineCount, duration: random.nextBelow(8) });
      }
      return choices;
    }),
  );
  return { machineCount, jobs };
}

function solve(shop: MachineShop, seed: number, epochs: number): ShopSearch {
  const search = new ShopSearch(shop, seed);
  for (let epoch = 0; epoch < epochs; epoch++) search.runEpoch();
  return search;
}

describe('search of machine shops', () => {
  it('finds what trying everything finds, with a valid plan and a bound that is not above it', () => {
    let proved = 0;
    for (let index = 0; index < CASES; index++) {
      const shop = tinyShop(index);
      const { best, lowerBound } = solve(shop, index, EPOCHS);
      const shortest = shortestShop(shop);
      expect({ index, makespan: best.makespan, faults: shopFaults(shop, best) }).toEqual({
        index,
        makespan: shortest,
        faults: [],
      });
      expect(lowerBound).toBeLessThanOrEqual(shortest);
      if (lowerBound === shortest) proved++;
    }
    // A bound of 0 would pass as well: most of these are small enough to be proved.
    expect(proved).toBeGreaterThan(CASES / 2);
  });

  it('gives the same plan again for the same seed and epochs, another way for another seed', () => {
    const shop: MachineShop = {
      machineCount: 6,
      jobs: Array.from({ length: 10 }, (_, job) =>
        Array.from({ length: 6 }, (_ignored, at) => [
          { machine: (at * 5 + job * 7) % 6, duration: 1 + ((job * 13 + at * 17) % 23) },
          { machine: (at * 5 + job * 7 + 3) % 6, duration: 1 + ((job * 11 + at * 19) % 29) },
        ]),
      ),
    };
    const first = solve(shop, 7, 3);
    const again = solve(shop, 7, 3);
    expect(again.best).toEqual(first.best);
    expect(again.moves).toBe(first.moves);
    expect(solve(shop, 8, 3).moves).not.toBe(first.moves);
  });
});

describe('faults of a shop plan', () => {
  const shop: MachineShop = {
    machineCount: 2,
    jobs: [[[{ machine: 0, duration: 3 }], [{ machine: 1, duration: 2 }]], [[{ machine: 0, duration: 4 }]]],
  };
  const plan = { makespan: 7, starts: [[0, 3], [3]], machines: [[0, 1], [0]] };

  it('has none to name in a valid plan', () => {
    expect(shopFaults(shop, plan)).toEqual([]);
  });

  it.each([
    ['two on one machine', { ...plan, starts: [[0, 3], [2]], makespan: 6 }, /meet on machine 0/],
    ['an operation before the one it follows', { ...plan, starts: [[0, 2], [3]] }, /operation 1 of job 0 starts at 2/],
    ['a machine that may not do it', { ...plan, machines: [[0, 0], [0]] }, /may not do it/],
    ['a missing start', { ...plan, starts: [[0, 3], []] }, /no start/],
    ['a makespan that is too small', { ...plan, makespan: 6 }, /the makespan is 7, not 6/],
  ])('names %s', (_, broken, words) => {
    expect(shopFaults(shop, broken).join('; ')).toMatch(words);
  });
});
