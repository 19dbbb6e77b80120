import fc from 'fast-check';
import { NoSpreadError, OptionError, TooFewValuesError } from '../errors.js';
import { boxplotFences } from './boxplot-fences.js';
import { generalizedEsd } from './generalized-esd.js';
import { grubbs } from './grubbs.js';
import { hampelFilter } from './hampel-filter.js';
import { largestPossibleZ, modifiedZ } from './modified-z.js';
import { quantileOfSorted, sorted, type QuantileType } from '../sample/quantile.js';

// The worked examples of handbooks and papers stand in test/reference/statistics and are run by check-case.spec.ts.
const PLAIN = [50.1, 50.3, 49.8, 50, 50.2, 49.9, 50.4, 50.1, 49.7, 50.2, 50, 50.3, 49.9, 50.1, 50];
const sample = fc.array(
  fc.integer({ min: -5000, max: 5000 }).map((n) => n / 10),
  { minLength: 15, maxLength: 40 },
);
const varied = sample.filter((values) => new Set(values).size > 12);

describe('outlier tests', () => {
  it('find the same values after the unit changes', () => {
    fc.assert(
      fc.property(
        varied,
        fc.integer({ min: 2, max: 20 }),
        fc.integer({ min: -50, max: 50 }),
        (values, factor, shift) => {
          const moved = values.map((value) => value * factor + shift);
          expect(grubbs(moved).statistic).toBeCloseTo(grubbs(values).statistic, 9);
          expect(generalizedEsd(moved, 3).numberOfOutliers).toBe(generalizedEsd(values, 3).numberOfOutliers);
          modifiedZ(moved).scores.forEach((score, at) => {
            expect(score).toBeCloseTo(modifiedZ(values).scores[at] ?? NaN, 8);
          });
        },
      ),
    );
  });

  it('find a planted value, and two that mask one another', () => {
    expect(grubbs([...PLAIN, 58]).extremeIndex).toBe(15);
    expect(grubbs([...PLAIN, 58]).isOutlierTwoSided).toBe(true);
    const masked = [...PLAIN, 58, 58.1];
    expect(
      generalizedEsd(masked, 4)
        .outliers.map(({ index }) => index)
        .sort(),
    ).toEqual([15, 16]);
    expect(modifiedZ(masked).outliers).toEqual([15, 16]);
  });

  it('never reach an ordinary z of 3 below 11 values', () => {
    expect(largestPossibleZ(10)).toBeLessThan(3);
    expect(largestPossibleZ(11)).toBeGreaterThan(3);
  });

  it('refuse what they cannot judge', () => {
    expect(() => grubbs([1, 1, 1, 1])).toThrow(NoSpreadError);
    expect(() => grubbs([1, 2])).toThrow(TooFewValuesError);
    expect(() => grubbs([1, Number.NaN, 2])).toThrow(/value 2 is NaN/);
    expect(() => grubbs(PLAIN, 1)).toThrow(OptionError);
    expect(() => generalizedEsd(PLAIN.slice(0, 14), 2)).toThrow(/14 values given, at least 15/);
    expect(() =>
      generalizedEsd(
        PLAIN.map(() => 7),
        2,
      ),
    ).toThrow(NoSpreadError);
    expect(() => generalizedEsd(PLAIN, 0)).toThrow(/whole number from 1 to 12/);
    expect(() => boxplotFences([1, 2, 3])).toThrow(TooFewValuesError);
  });
});

describe('modified z', () => {
  it('falls back to the mean deviation, then to the resolution, and says which', () => {
    const half = [7, 7, 7, 7, 7, 9];
    expect(modifiedZ(half)).toMatchObject({ scale: 'mean-absolute-deviation', outliers: [5] });
    expect(modifiedZ([7, 7, 7], { resolution: 0.1 })).toMatchObject({ scale: 'resolution', outliers: [] });
    expect(() => modifiedZ([7, 7, 7])).toThrow(NoSpreadError);
  });
});

describe('Hampel filter', () => {
  it('leaves a series alone in which nothing stands out, whatever its trend', () => {
    const line = Array.from({ length: 30 }, (_, step) => step / 2);
    expect(hampelFilter(line)).toEqual({ flagged: [], filtered: line });
  });

  it('does not flag the last digit of equal readings', () => {
    const readings = [5, 5, 5, 5.1, 5, 5, 5];
    expect(hampelFilter(readings).flagged).toEqual([3]);
    expect(hampelFilter(readings, { resolution: 0.1 + 1e-9 }).flagged).toEqual([]);
  });
});

describe('what no method can judge', () => {
  const methods: Readonly<Record<string, (values: readonly number[]) => unknown>> = {
    grubbs,
    generalizedEsd: (values) => generalizedEsd(values, 3),
    modifiedZ,
    hampelFilter,
    boxplotFences: (values) => boxplotFences(values),
  };

  // The mean of equal values need not be that value: their spread is rounding alone.
  it.each(Object.entries(methods))('%s refuses values that are all equal, whatever their digits', (_, judge) => {
    for (const value of [65.3, 0.1, 1e-9 / 3]) {
      expect(() => judge(new Array<number>(25).fill(value))).toThrow(NoSpreadError);
    }
  });

  it.each(Object.entries(methods))('%s refuses values whose squares are no numbers', (_, judge) => {
    expect(() => judge([...PLAIN, 1e200])).toThrow('value 16 is 1e+200. Accepted: numbers up to 1e+100 in size.');
  });

  it('takes tens of thousands of values', () => {
    const many = Array.from({ length: 200_000 }, (_, at) => PLAIN[at % PLAIN.length]!);
    expect(grubbs([...many, 99]).isOutlierTwoSided).toBe(true);
  });

  it('is an option below zero', () => {
    expect(() => modifiedZ(PLAIN, { cut: -1 })).toThrow(OptionError);
    expect(() => hampelFilter(PLAIN, { threshold: 0 })).toThrow(OptionError);
    expect(() => hampelFilter(PLAIN, { resolution: -1 })).toThrow(OptionError);
  });
});

describe('quantile', () => {
  const types: readonly QuantileType[] = [1, 2, 3, 4, 5, 6, 7, 8, 9];

  it('lies within the sample and rises with the probability, for each definition', () => {
    fc.assert(
      fc.property(varied, fc.constantFrom(...types), fc.double({ min: 0, max: 1, noNaN: true }), (values, type, p) => {
        const ascending = sorted(values);
        const low = quantileOfSorted(ascending, p / 2, type);
        const high = quantileOfSorted(ascending, p, type);
        expect(low).toBeLessThanOrEqual(high + 1e-9);
        expect(low).toBeGreaterThanOrEqual(ascending[0] ?? NaN);
        expect(high).toBeLessThanOrEqual(ascending.at(-1) ?? NaN);
      }),
    );
  });
});
