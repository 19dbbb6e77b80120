import type { ShareFigure, ValueFigure } from '@archwright/contracts';
import { drawChart } from './chart-geometry.js';
import { shareView, usageGroups, valueView } from './figures-view.js';

const share: ShareFigure = {
  key: 'remake',
  standing: { kind: 'charted' },
  centre: 0.25,
  points: [
    { monthOn: '2026-11-01', events: 1, size: 4, lower: 0, upper: 0.9, isOutside: false },
    { monthOn: '2026-12-01', events: 4, size: 4, lower: 0, upper: 0.9, isOutside: true },
  ],
};
const value: ValueFigure = {
  key: 'lead-time',
  unit: 'days',
  standing: { kind: 'too-few', needed: 12 },
  centre: 61.25,
  lower: null,
  upper: null,
  points: [{ caseId: 'a', caseNumber: '26-0001', on: '2026-12-10', value: 61, isOutside: false }],
};

it('says what a share comes to, and shows in the table whatever the picture shows', () => {
  const { sentence, rows, chart } = shareView(share);
  expect(sentence).toBe('5 of 8 in 2 months: 63 %. 1 point lies outside what chance explains: look for the cause.');
  expect(rows).toMatchObject([
    { head: 'November 2026', cells: ['1', '4', '25 %', '0 % to 90 %', 'inside'] },
    { head: 'December 2026', cells: ['4', '4', '100 %', '0 % to 90 %', 'outside'] },
  ]);
  expect(rows).toHaveLength(chart.points.length);
});

it('does not judge what is too little to judge', () => {
  const { sentence, rows } = valueView(value, '2027-01-04');
  expect(sentence).toBe('61.3 days on the average of 1 case. Limits are drawn from 12 cases on.');
  expect(rows[0]?.cells).toEqual(['Thu 10 Dec 2026', '61 days', '']);
  expect(valueView({ ...value, centre: null, points: [] }, '2027-01-04').sentence).toBeNull();
});

it('draws higher values higher, inside the frame, with limits as steps', () => {
  const { points, upper, centreY, height } = drawChart(shareView(share).chart);
  const [low, high] = points;
  expect(high?.y).toBeLessThan(low?.y ?? 0);
  expect(points.every(({ y }) => y >= 0 && y <= height)).toBe(true);
  expect(upper).toMatch(/^M48\.0 [\d.]+H[\d.]+L/);
  expect(centreY).not.toBeNull();
  expect(drawChart({ points: [], centre: null, isShare: false }).upper).toBe('');
});

it('puts the fullest first and gives no share to what was closed', () => {
  const row = { kind: 'chair' as const, place: 'North', bookedMinutes: 30, openMinutes: 60 };
  const [chairs] = usageGroups([
    { ...row, id: 'a', name: 'Chair 1', openMinutes: 0 },
    { ...row, id: 'b', name: 'Chair 2' },
  ]);
  expect(chairs?.rows).toMatchObject([
    { name: 'Chair 2', used: '50 %' },
    { name: 'Chair 1', used: 'not open' },
  ]);
});
