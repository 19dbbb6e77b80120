import { closureStatistics } from './closures.js';
import { ellipses } from './ellipse.js';

const at = (of: readonly (readonly [number, number])[]) => of.map(([x, y]) => ({ x, y }));

// Computed by hand and by script from the definitions; the factor is Hotelling's, from the F table.
describe('closure statistics', () => {
  it('of four taps around a point', () => {
    const found = closureStatistics(
      at([
        [0.1, 0],
        [-0.1, 0],
        [0, 0.1],
        [0, -0.1],
      ]),
    );
    expect(found).toMatchObject({ n: 4, mean: { x: 0, y: 0 } });
    expect(found.covariance?.xx).toBeCloseTo(0.0066667, 6);
    expect(found.rmsMm).toBeCloseTo(0.1, 12);
    expect(found.maxPairMm).toBeCloseTo(0.2, 12);
    expect(found.ellipses?.ofPoints.semiMajor).toBeCloseTo(0.19986, 4);
    expect(found.ellipses?.ofPoints.area).toBeCloseTo(0.12548, 4);
  });

  it('of six taps', () => {
    const found = closureStatistics(
      at([
        [0.05, -0.1],
        [0.12, 0.04],
        [-0.08, 0.02],
        [0.01, -0.06],
        [-0.04, 0.09],
        [0.09, 0.01],
      ]),
    );
    expect(found.mean.x).toBeCloseTo(0.025, 12);
    expect(found.mean.y).toBeCloseTo(0, 12);
    expect(found.rmsMm).toBeCloseTo(0.09412, 4);
    expect(found.maxPairMm).toBeCloseTo(0.21024, 4);
    expect(found.ellipses?.eigenvalues[0]).toBeCloseTo(0.006476, 5);
    expect(found.ellipses?.ofPoints.semiMajor).toBeCloseTo(0.19698, 4);
    expect(found.ellipses?.ofPoints.semiMinor).toBeCloseTo(0.15776, 4);
    expect(found.ellipses?.axisDeg).toBeCloseTo(-30.72, 2);
    expect(found.isDouble).toBe(false);
  });

  it('of scattered taps', () => {
    const found = closureStatistics(
      at([
        [0, 0],
        [0.9, 0.1],
        [-0.2, -0.8],
        [0.4, 1.1],
        [-0.7, 0.5],
      ]),
    );
    expect(found.rmsMm).toBeCloseTo(0.82656, 4);
    expect(found.maxPairMm).toBeCloseTo(1.99249, 4);
    expect(found.ellipses?.eigenvalues[1]).toBeCloseTo(0.33706, 4);
  });

  it.each([
    [4, 14.25],
    [5, 5.0945],
    [6, 2.8935],
    [10, 1.0033],
  ])('takes the small-sample factor of the mean at n = %d as %d', (n, factor) => {
    expect(ellipses({ xx: 1, xy: 0, yy: 1 }, n).ofMean.factor).toBeCloseTo(factor, 3);
  });

  it('says nothing about a region of three points', () => {
    expect(
      closureStatistics(
        at([
          [0, 0],
          [1, 0],
          [0, 1],
        ]),
      ).ellipses,
    ).toBeNull();
    expect(() => ellipses({ xx: 1, xy: 0, yy: 1 }, 3)).toThrow(/3 points given, at least 4/);
  });

  it('tells two places from scatter', () => {
    const two = at([
      [0, 0],
      [0.1, 0],
      [0, 0.1],
      [1.2, 1],
      [1.3, 1],
      [1.2, 1.1],
    ]);
    expect(closureStatistics(two).isDouble).toBe(true);
  });
});
