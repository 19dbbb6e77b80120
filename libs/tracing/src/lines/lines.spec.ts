import fc from 'fast-check';
import { intersect, toSlopeLine, totalLeastSquares, rmsFrom } from './line.js';
import { consensusLine } from './consensus-line.js';
import { huberLine, leastMedianLine, leastTrimmedLine, mmLine, repeatedMedianLine } from './robust-lines.js';
import { ordinaryLeastSquares } from './ordinary-least-squares.js';

const at = (of: readonly (readonly [number, number])[]) => of.map(([x, y]) => ({ x, y }));

// The worked examples of the literature stand in test/reference/statistics and are run by check-case.spec.ts.
describe('lines', () => {
  it('fit two arms of six points each and cross, computed by script from the definition', () => {
    const right = totalLeastSquares(
      at([
        [1, 0.62],
        [2, 1.18],
        [3, 1.83],
        [4, 2.38],
        [5, 3.02],
        [6, 3.57],
      ]),
    );
    const leftPoints = at([
      [-1, 0.66],
      [-2, 1.27],
      [-3, 1.98],
      [-4, 2.58],
      [-5, 3.29],
      [-6, 3.88],
    ]);
    const left = totalLeastSquares(leftPoints);
    const apex = intersect(right, left);
    expect(apex?.x).toBeCloseTo(-0.014, 3);
    expect(apex?.y).toBeCloseTo(0.0094, 3);
    expect((Math.atan(toSlopeLine(right).slope) * 180) / Math.PI).toBeCloseTo(30.75, 2);
    expect((Math.atan(toSlopeLine(left).slope) * 180) / Math.PI).toBeCloseTo(-33.04, 2);
    expect(rmsFrom(left, leftPoints)).toBeCloseTo(0.0224, 4);
  });

  it('differ where one of five points is wild', () => {
    const points = at([
      [1, 0.5],
      [2, 1],
      [3, 1.5],
      [4, 2],
      [5, 6],
    ]);
    expect(ordinaryLeastSquares(points).slope).toBeCloseTo(1.2, 9);
    expect(toSlopeLine(totalLeastSquares(points)).slope).toBeCloseTo(1.46, 2);
    for (const robust of [repeatedMedianLine, leastMedianLine, leastTrimmedLine, mmLine]) {
      expect(robust(points).slope).toBeCloseTo(0.5, 6);
    }
    expect(consensusLine(points, 0.1).inliers).toEqual([0, 1, 2, 3]);
  });

  it('turn and move with the points', () => {
    const list = fc.array(fc.tuple(fc.integer({ min: -99, max: 99 }), fc.integer({ min: -99, max: 99 })), {
      minLength: 6,
      maxLength: 20,
    });
    fc.assert(
      fc.property(list, fc.integer({ min: 1, max: 359 }), (raw, degrees) => {
        const points = at(raw);
        const angle = (degrees * Math.PI) / 180;
        const turned = points.map(({ x, y }) => ({
          x: x * Math.cos(angle) - y * Math.sin(angle) + 7,
          y: x * Math.sin(angle) + y * Math.cos(angle) - 3,
        }));
        fc.pre(new Set(raw.map(([x, y]) => `${String(x)} ${String(y)}`)).size > 3);
        expect(rmsFrom(totalLeastSquares(turned), turned)).toBeCloseTo(rmsFrom(totalLeastSquares(points), points), 6);
      }),
    );
  });

  it('refuse points that make none', () => {
    expect(() =>
      totalLeastSquares(
        at([
          [1, 1],
          [1, 1],
        ]),
      ),
    ).toThrow(/all points coincide/);
    expect(() =>
      ordinaryLeastSquares(
        at([
          [1, 1],
          [1, 2],
          [1, 3],
        ]),
      ),
    ).toThrow(/all x are equal/);
    expect(() =>
      mmLine(
        at([
          [1, 1],
          [2, 2],
        ]),
      ),
    ).toThrow(/2 points given, at least 5/);
    expect(
      huberLine(
        at([
          [0, 0],
          [1, 1],
          [2, 2],
          [3, 3.1],
        ]),
      ).slope,
    ).toBeCloseTo(1, 1);
  });
});
