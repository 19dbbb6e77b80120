import { seededRandom } from './seeded-random.js';

describe('seeded random', () => {
  it('gives the same stream for the same seed and another for another stream', () => {
    const take = (seed: number, stream: number) => {
      const random = seededRandom(seed, stream);
      return Array.from({ length: 8 }, () => random.nextUint32());
    };
    expect(take(7, 0)).toEqual(take(7, 0));
    expect(take(7, 0)).not.toEqual(take(7, 1));
    expect(take(7, 0)).not.toEqual(take(8, 0));
  });

  it('draws each value below the bound about equally often', () => {
    const random = seededRandom(20260105);
    const counts = new Array<number>(6).fill(0);
    for (let draw = 0; draw < 60_000; draw++) {
      const face = random.nextBelow(6);
      counts[face] = (counts[face] ?? 0) + 1;
    }
    // Chi-square with 5 degrees of freedom: 20.515 is the 0.999 quantile (NIST/SEMATECH handbook, table 1.3.6.7.4).
    const chiSquare = counts.reduce((sum, count) => sum + (count - 10_000) ** 2 / 10_000, 0);
    expect(chiSquare).toBeLessThan(20.515);
  });
});
