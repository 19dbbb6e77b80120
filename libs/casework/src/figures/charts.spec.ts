import { FEWEST_MONTHS, chartShares, type MonthCount } from './chart-shares.js';
import { FEWEST_CASES, chartValues, type CaseValue } from './chart-values.js';

const month = (index: number, events: number, size: number): MonthCount => ({
  monthOn: `2026-${String(index + 1).padStart(2, '0')}-01`,
  events,
  size,
});
const aCase = (value: number, index: number): CaseValue => ({
  caseId: String(index),
  caseNumber: `26-${String(index)}`,
  on: '2026-01-01',
  value,
});

describe('shares month by month', () => {
  it('have no limits while there are few, and no centre without any case', () => {
    const few = chartShares([month(0, 1, 4), month(1, 0, 0), month(2, 3, 4)]);
    expect(few).toMatchObject({ standing: { kind: 'too-few', needed: FEWEST_MONTHS }, centre: 0.5 });
    expect(few.points).toHaveLength(2);
    expect(few.points.every(({ upper }) => upper === null)).toBe(true);
    expect(chartShares([])).toMatchObject({ centre: null, points: [] });
  });

  it('point out a month that chance does not explain, and no other', () => {
    const months = Array.from({ length: 12 }, (_, index) => month(index, index === 7 ? 14 : 2, 40));
    const { standing, points } = chartShares(months);
    expect(standing).toEqual({ kind: 'charted' });
    expect(points.flatMap(({ isOutside }, index) => (isOutside ? [index] : []))).toEqual([7]);
  });

  it('do not point out one event in a month of one case, which limits alone would', () => {
    const months = Array.from({ length: 12 }, (_, index) => month(index, index === 3 ? 1 : 0, index === 3 ? 1 : 60));
    const { points } = chartShares(months);
    expect(points[3]).toMatchObject({ events: 1, size: 1 });
    expect((points[3]?.events ?? 0) / 1).toBeGreaterThan(points[3]?.upper ?? 1);
    // 1 of 661 is the share of all: one in one month of one case has exactly that probability, 0.0015.
    expect(points[3]?.isOutside).toBe(false);
  });

  it('that are all the same have nothing to compare', () => {
    const months = Array.from({ length: 9 }, (_, index) => month(index, 5, 5));
    expect(chartShares(months).standing).toEqual({ kind: 'no-spread' });
  });
});

describe('values case by case', () => {
  it('have no limits while there are few or all are the same', () => {
    expect(chartValues([30, 40].map(aCase))).toMatchObject({
      standing: { needed: FEWEST_CASES },
      centre: 35,
      upper: null,
    });
    const same = Array.from({ length: FEWEST_CASES }, () => 5).map(aCase);
    expect(chartValues(same)).toMatchObject({ standing: { kind: 'no-spread' }, centre: 5 });
  });

  it('point out a case beyond the limits, which never lie below nothing', () => {
    const values = [30, 34, 31, 33, 30, 35, 32, 30, 34, 33, 31, 90].map(aCase);
    const { lower, points } = chartValues(values);
    expect(points.filter(({ isOutside }) => isOutside).map(({ value }) => value)).toEqual([90]);
    expect(lower).toBeGreaterThanOrEqual(0);
  });
});
