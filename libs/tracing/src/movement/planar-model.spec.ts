import { toDegrees } from '../point.js';
import { armAngleDeg, bennettAngleDeg, modelApexAngleDeg, rotated } from './planar-model.js';

// Exact geometry of a rotation about the working condyle, computed by hand and by script.
describe('planar model of lateral movement', () => {
  it('draws 120 degrees when needle and condyles make an equilateral triangle', () => {
    for (const intercondylarMm of [90, 110, 130]) {
      const needleMm = (intercondylarMm * Math.sqrt(3)) / 2;
      expect(modelApexAngleDeg({ intercondylarMm, needleMm })).toBeCloseTo(120, 9);
    }
  });

  it.each([
    [60, 94.979],
    [85, 114.19],
    [100, 122.378],
  ])('with the needle %d mm forward draws %d degrees', (needleMm, angle) => {
    expect(modelApexAngleDeg({ intercondylarMm: 110, needleMm })).toBeCloseTo(angle, 3);
  });

  it('turns a Bennett angle into an arm angle and back', () => {
    const model = { intercondylarMm: 110, needleMm: 85 };
    expect(modelApexAngleDeg({ ...model, bennettDeg: 15 })).toBeCloseTo(128.675, 3);
    const arm = armAngleDeg({ ...model, bennettDeg: 15 });
    expect(arm).toBeCloseTo(25.662, 3);
    expect(bennettAngleDeg(model, arm)).toBeCloseTo(15, 9);
  });

  it('moves along an arc whose chord lags the tangent by half the rotation', () => {
    const { x, y } = rotated({ intercondylarMm: 110, needleMm: 85 }, 5);
    expect(x).toBeCloseTo(7.6175, 3);
    expect(y).toBeCloseTo(4.4701, 3);
    expect(Math.hypot(x, y)).toBeCloseTo(8.8323, 3);
    expect(toDegrees(Math.atan2(y, x))).toBeCloseTo(30.405, 3);
  });

  it('refuses distances that are none', () => {
    expect(() => modelApexAngleDeg({ intercondylarMm: 0, needleMm: 85 })).toThrow(/above 0 mm/);
  });
});
