import fc from 'fast-check';
import { NoSpreadError } from '../errors.js';
import { shrinkMeans } from '../shrinkage/shrink-means.js';
import { funnel } from './funnel.js';
import { proportionInterval } from './proportion-interval.js';

describe('rates', () => {
  it('every interval holds the share and widens with the level', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 300 }), fc.double({ min: 0, max: 1, noNaN: true }), (n, part) => {
        const events = Math.round(n * part);
        const narrow = proportionInterval(events, n, 0.9);
        for (const [name, [low, high]] of Object.entries(proportionInterval(events, n, 0.99))) {
          const [lowNarrow, highNarrow] = narrow[name as keyof typeof narrow];
          expect(low).toBeLessThanOrEqual(events / n + 1e-12);
          expect(high).toBeGreaterThanOrEqual(events / n - 1e-12);
          expect(low).toBeLessThanOrEqual(lowNarrow + 1e-9);
          expect(high).toBeGreaterThanOrEqual(highNarrow - 1e-9);
        }
      }),
    );
  });

  it('exact tails share the observed value: together they exceed 1', () => {
    for (const { exactLowerTail, exactUpperTail } of funnel([0, 3, 9, 2], [4, 25, 40, 30]).units) {
      expect(exactLowerTail + exactUpperTail).toBeGreaterThan(1);
    }
  });

  it('refuses impossible counts', () => {
    expect(() => proportionInterval(5, 4)).toThrow(/events 5 is not accepted. Accepted: a whole number from 0 to 4/);
    expect(() => funnel([0, 0], [3, 4])).toThrow(NoSpreadError);
  });
});

describe('shrinkage', () => {
  // Thirteen vaccine trials, log risk ratios: Colditz et al. (1994); figures of the R package metafor (Viechtbauer 2010).
  const means = [
    -0.889311333920205, -1.58538865720143, -1.34807314829969, -1.44155119002131, -0.217547322211296, -0.786115585818864,
    -1.62089822359839, 0.0119523335238405, -0.469417648738149, -1.37134480347278, -0.339358828338391, 0.445913400571379,
    -0.0173139482168798,
  ];
  const variances = [
    0.325584765003961, 0.194581121398144, 0.415367965367965, 0.0200100319022476, 0.0512101721696309,
    0.00690561845590876, 0.223017247572315, 0.00396157929781773, 0.056434210463249, 0.0730247936130289,
    0.0124122139715597, 0.532505845200153, 0.0714046596839863,
  ];

  it('gives the published between-group variance, mean and shrunken means', () => {
    const found = shrinkMeans(means, variances);
    expect(found.betweenVariance).toBeCloseTo(0.308760262862376, 9);
    expect(found.mean).toBeCloseTo(-0.714117222073227, 9);
    expect(found.seMean).toBeCloseTo(0.178742089535403, 9);
    expect(found.shrunk[0]).toBeCloseTo(-0.799390973185865, 9);
    expect(found.shrunk[11]).toBeCloseTo(-0.28836447090031, 9);
  });

  it('draws every group between its own mean and the overall one, all the way when nothing differs', () => {
    const { mean, shrunk } = shrinkMeans(means, variances);
    shrunk.forEach((value, at) => {
      const own = means[at] ?? NaN;
      expect(value).toBeGreaterThanOrEqual(Math.min(own, mean));
      expect(value).toBeLessThanOrEqual(Math.max(own, mean));
    });
    expect(shrinkMeans([1, 1.01, 0.99], [4, 4, 4])).toMatchObject({ betweenVariance: 0, shrunk: [1, 1, 1] });
    expect(() => shrinkMeans([1, 2], [1, 0])).toThrow(/variance 0 is not accepted/);
  });
});
