import { seededRandom } from '@archwright/kernel';
import { screenShares } from './screen-shares.js';

const unit = (name: string, events: number, size: number) => ({ unit: name, events, size });

describe('shares of units of different size', () => {
  it('gives at most as many false alarms as set', () => {
    const [runs, units, unitsPerAlarm] = [1_000, 5, 50];
    let alarms = 0;
    for (let run = 0; run < runs; run++) {
      const random = seededRandom(43, run);
      const counts = Array.from({ length: units }, (_, at) => {
        const size = 30 + 40 * at;
        const events = Array.from({ length: size }, () => random.nextUnit() < 0.1).filter(Boolean).length;
        return unit(String(at), events, size);
      });
      alarms += screenShares(counts, unitsPerAlarm).filter(({ outcome }) => outcome === 'stands-out').length;
    }
    const asSet = (runs * units) / unitsPerAlarm;
    // Counts are whole, so the exact tail is mostly smaller than it is allowed to be.
    expect(alarms).toBeLessThan(asSet * 1.2);
    expect(alarms).toBeGreaterThan(asSet * 0.2);
  });

  it('finds a unit with three times the share, and draws small ones toward the whole', () => {
    const [a, b, c] = screenShares([unit('a', 20, 200), unit('b', 60, 200), unit('c', 4, 20)], 1000);
    expect(a).toMatchObject({ outcome: 'fine' });
    expect(b).toMatchObject({ outcome: 'stands-out', units: 3 });
    if (c?.outcome !== 'fine') throw new Error('Four of twenty are ordinary.');
    expect(c.centre).toBeCloseTo(84 / 420, 12);
    const far = screenShares([unit('a', 20, 200), unit('b', 60, 200), unit('c', 0, 20)], 1000)[2];
    if (far?.outcome !== 'fine') throw new Error('None of twenty is ordinary.');
    expect(far.shrunk).toBeGreaterThan(0);
    expect(far.shrunk).toBeLessThan(far.centre);
  });

  it('says what is too few: cases, or units to compare', () => {
    expect(screenShares([unit('a', 5, 19), unit('b', 2, 100)], 1000)).toEqual([
      { outcome: 'too-few', unit: 'a', size: 19, needed: 20, units: 1 },
      { outcome: 'too-few', unit: 'b', size: 100, needed: 20, units: 1 },
    ]);
  });

  it('holds nothing against units that do not differ', () => {
    const none = screenShares([unit('a', 0, 30), unit('b', 0, 300)], 1000);
    expect(none).toMatchObject([
      { outcome: 'fine', centre: 0, tail: 1 },
      { outcome: 'fine', centre: 0, tail: 1 },
    ]);
  });
});
