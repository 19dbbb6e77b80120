import { classicLateralSettingDeg, excursionSummary } from './excursions.js';

// Woelfel, J Adv Prosthodont 2014;6, 316 dentate students; the paper gives the ratios as 2.3 and 3.0.
it('sums and relates the published mean excursions', () => {
  const summary = excursionSummary({ rightMm: 9.2, leftMm: 9.4, protrusionMm: 8, openingMm: 51.2, hingeMm: 17.2 });
  expect(summary.lateralSumMm).toBe(18.6);
  expect(summary.lateralToProtrusion).toBeCloseTo(2.325, 3);
  expect(summary.openingToHinge).toBeCloseTo(2.977, 3);
});

it('refuses a movement of zero, which has no ratio', () => {
  const still = { rightMm: 9, leftMm: 9, protrusionMm: 0, openingMm: 50, hingeMm: 17 };
  expect(() => excursionSummary(still)).toThrow('protrusionMm');
});

// Textbook formula H/8 + 12, from memory.
it.each([
  [20, 14.5],
  [30, 15.75],
  [32, 16],
  [40, 17],
])('turns an inclination of %p into %p degrees', (inclination, setting) => {
  expect(classicLateralSettingDeg(inclination)).toBe(setting);
});

it('refuses an inclination that no joint has', () => {
  expect(() => classicLateralSettingDeg(Number.NaN)).toThrow('0 to 75 degrees');
});
