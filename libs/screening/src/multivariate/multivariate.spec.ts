import { seededRandom } from '@archwright/kernel';
import { NoSpreadError } from '../errors.js';
import { normalQuantile } from '../distribution/quantiles.js';
import { bestSubset } from './best-subset.js';
import { mahalanobis } from './mahalanobis.js';
import { minimumCovarianceDeterminant } from './minimum-covariance-determinant.js';

// The worked examples of handbooks and papers stand in test/reference/statistics and are run by check-case.spec.ts.
function normalRows(count: number, seed: number): number[][] {
  const random = seededRandom(seed);
  const normal = () => normalQuantile((random.nextUint32() + 0.5) / 0x1_0000_0000);
  return Array.from({ length: count }, () => {
    const shared = normal();
    return [60 + 2 * shared + normal(), 40 + shared + 0.5 * normal(), 30 + normal()];
  });
}

describe('robust distances', () => {
  const wild = Array.from({ length: 12 }, (_, at) => [75 + at / 10, 30, 30 + at / 10]);
  const rows = [...normalRows(40, 3), ...wild];
  const planted = wild.map((_, at) => 40 + at);

  it('find a group of wild rows that masks itself from the classical ones', () => {
    expect(minimumCovarianceDeterminant(rows).outliers).toEqual(expect.arrayContaining(planted));
    expect(mahalanobis(rows).outliers.filter((at) => at >= 40).length).toBeLessThan(planted.length);
  });

  it('do not depend on unit or seed', () => {
    const inOtherUnits = rows.map(([a = 0, b = 0, c = 0]) => [a / 10, b * 25.4 + 3, c]);
    const found = minimumCovarianceDeterminant(rows, { seed: 5 });
    minimumCovarianceDeterminant(inOtherUnits, { seed: 6 }).distances.forEach((distance, at) => {
      expect(distance).toBeCloseTo(found.distances[at] ?? NaN, 6);
    });
  });

  it('reach the proved optimum from random starts', () => {
    const few = normalRows(18, 7);
    const exact = bestSubset(few, 11, seededRandom(1));
    // Enough copies far away to make an exhaustive search too long; they cannot be part of the best subset.
    const many = [...few, ...Array.from({ length: 12 }, (_, at) => [500 + at, 300 + at * at, 200 - at])];
    expect(bestSubset(many, 11, seededRandom(1)).determinant).toBeLessThanOrEqual(exact.determinant * (1 + 1e-9));
  });

  it('refuse too few rows and rows in a plane', () => {
    expect(() => minimumCovarianceDeterminant(rows.slice(0, 5))).toThrow(/5 rows given, at least 6/);
    const flat = rows.map(([a = 0, b = 0]) => [a, b, a + b]);
    expect(() => mahalanobis(flat)).toThrow(NoSpreadError);
    expect(() => minimumCovarianceDeterminant(flat)).toThrow(NoSpreadError);
    expect(() => minimumCovarianceDeterminant(rows, { share: 0.4 })).toThrow(/from 0.5 to 1/);
  });
});
