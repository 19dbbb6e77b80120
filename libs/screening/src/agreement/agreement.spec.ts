import fc from 'fast-check';
import { UnequalLengthsError } from '../errors.js';
import { blandAltman } from './bland-altman.js';
import { duplicateError } from './duplicate-error.js';
import { intraclassCorrelation } from './intraclass-correlation.js';
import { repeatability } from './repeatability.js';

// The worked examples of handbooks and papers stand in test/reference/statistics and are run by check-case.spec.ts.
const reading = fc.integer({ min: 500, max: 800 }).map((n) => n / 10);
const pairs = fc
  .array(fc.tuple(reading, reading), { minLength: 4, maxLength: 30 })
  .filter((list) => new Set(list.map(([a, b]) => a - b)).size > 2 && new Set(list.map(([a]) => a)).size > 2);

describe('agreement', () => {
  it('turns its sign with the order of the two, and nothing else', () => {
    fc.assert(
      fc.property(pairs, (list) => {
        const [first, second] = [list.map(([a]) => a), list.map(([, b]) => b)];
        const there = blandAltman(first, second);
        const back = blandAltman(second, first);
        expect(back.meanDifference).toBeCloseTo(-there.meanDifference, 9);
        expect(back.limits[0]).toBeCloseTo(-there.limits[1], 9);
        expect(back.concordance).toBeCloseTo(there.concordance, 9);
      }),
    );
  });

  it('keeps a constant bias out of the random error but in the duplicate error', () => {
    const first = [60, 62.5, 61, 64, 63];
    const second = [60.2, 62.4, 61.3, 63.8, 63.1];
    const biased = second.map((value) => value + 2);
    expect(duplicateError(first, biased).randomError).toBeCloseTo(duplicateError(first, second).randomError, 9);
    expect(duplicateError(first, biased).dahlberg).toBeGreaterThan(duplicateError(first, second).dahlberg + 1);
  });

  it('counts a judge who reads high against absolute agreement, not against consistency', () => {
    const table = [60, 63, 65, 61, 68].map((value, at) => [value, value + 3 + (at % 2) / 10]);
    const { single } = intraclassCorrelation(table);
    expect(single.twoWayFixed.value).toBeGreaterThan(0.99);
    expect(single.twoWayRandom.value).toBeLessThan(0.8);
  });

  it('weighs groups of different size', () => {
    const groups = [
      [10, 10.2, 10.1, 10.4],
      [11, 11.1],
      [10.5, 10.4, 10.6],
    ];
    const found = repeatability(groups);
    expect(found.mean).toBeCloseTo(groups.flat().reduce((sum, value) => sum + value, 0) / 9, 12);
    // Pooled over 3 + 1 + 2 degrees of freedom, by hand: 0.0875 + 0.005 + 0.02.
    expect(found.withinSd ** 2).toBeCloseTo(0.1125 / 6, 12);
    expect(found.reproducibilitySd).toBeGreaterThan(found.withinSd);
  });

  it('refuses what cannot be compared', () => {
    expect(() => blandAltman([1, 2, 3], [1, 2])).toThrow(UnequalLengthsError);
    expect(() => duplicateError([1, 2], [1, 2])).toThrow(/All duplicates are equal/);
    // A bias alone, whatever the rounding of the differences.
    const once = [61.3, 64.2, 60.1, 66.7];
    const later = once.map((value) => value + 0.1);
    expect(() => duplicateError(once, later)).toThrow(/differs by 0.1\d*: that is a bias alone/);
    expect(() => blandAltman(once, later)).toThrow(/the resolution hides the scatter/);
    expect(() => intraclassCorrelation(once.map((value, at) => [value, later[at]!]))).toThrow(/agree to the digit/);
    expect(() => intraclassCorrelation([[1], [2]])).toThrow(/1 ratings per target given, at least 2/);
    expect(() => repeatability([[1, 2]])).toThrow(/1 groups given, at least 2/);
  });
});
