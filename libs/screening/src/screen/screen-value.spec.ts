import fc from 'fast-check';
import { OptionError } from '../errors.js';
import { normalValues } from './normal-values.builder.js';
import { screenValue, type ValueOutcome } from './screen-value.js';

const settings = { valuesPerAlarm: 100, resolution: 0.001 };
const clinic = (value: number, others: readonly number[]) => [{ group: 'clinic', value, others }];
const only = <Outcome>([outcome]: readonly Outcome[]): Outcome => {
  if (outcome === undefined) throw new Error('One comparison has one outcome.');
  return outcome;
};
const standsOut = ({ outcome }: ValueOutcome): boolean => outcome === 'stands-out';

describe('one value beside its groups', () => {
  // 4000 draws: the standard error of a share of 1 % is a sixth of it; the cut's own error is below a quarter.
  it.each([10, 20, 60])('gives false alarms as rarely as set, beside %i others', (size) => {
    const runs = 4_000;
    let alarms = 0;
    for (let run = 0; run < runs; run++) {
      const [value = 0, ...others] = normalValues(size + 1, 17, run);
      if (standsOut(only(screenValue(clinic(value, others), settings)))) alarms++;
    }
    const asSet = runs / settings.valuesPerAlarm;
    expect(alarms).toBeGreaterThan(asSet * 0.5);
    expect(alarms).toBeLessThan(asSet * 1.5);
  });

  it('shares the rate among the groups of a value', () => {
    const others = normalValues(200, 3);
    const compared = (groups: string[]) =>
      screenValue(
        groups.map((group) => ({ group, value: 1, others })),
        settings,
      ).map((outcome) => (outcome.outcome === 'too-few' ? NaN : outcome.cut));
    const [alone = NaN] = compared(['clinic']);
    const [first = NaN, second = NaN] = compared(['clinic', 'organisation']);
    expect(first).toBe(second);
    expect(first).toBeGreaterThan(alone);
  });

  it('finds a wild value however wild a fifth of the others are', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 10_000 }), fc.double({ min: 100, max: 1e6 }), (stream, wild) => {
        const others = [...normalValues(40, 5, stream), ...normalValues(10, 6, stream).map((value) => value + wild)];
        expect(only(screenValue(clinic(wild, others), settings)).outcome).toBe('stands-out');
        expect(only(screenValue(clinic(0, others), settings)).outcome).toBe('fine');
      }),
      { seed: 20260105, numRuns: 50 },
    );
  });

  it('says that there are too few others, and how many it needs', () => {
    expect(screenValue(clinic(90, [60, 61, 62]), settings)).toEqual([
      { outcome: 'too-few', group: 'clinic', size: 3, needed: 10 },
    ]);
  });

  it('believes no spread below a step of the instrument', () => {
    const others = Array.from({ length: 30 }, () => 65);
    const half = { valuesPerAlarm: 1000, resolution: 0.5 };
    expect(only(screenValue(clinic(66, others), half))).toMatchObject({ outcome: 'fine', scale: 'resolution' });
    expect(only(screenValue(clinic(68, others), half))).toMatchObject({ outcome: 'stands-out', score: 6 });
  });

  it('refuses a resolution of nothing', () => {
    expect(() => screenValue(clinic(1, []), { ...settings, resolution: 0 })).toThrow(OptionError);
  });
});
