import { makeAxis } from './axis-view.js';
import { layLines, type Line } from './line-view.js';

const at = (iso: string): number => Date.parse(iso);

const visit = (start: string, more: Partial<Line['visits'][number]> = {}): Line['visits'][number] => ({
  startMs: at(start),
  endMs: at(start) + 1_800_000,
  title: start,
  state: 'to-come',
  firm: true,
  againstWish: false,
  ...more,
});
const line = (more: Partial<Line>): Line => ({ zone: 'Europe/London', visits: [], bars: [], couriers: [], ...more });

describe('makeAxis', () => {
  const axis = makeAxis(at('2027-01-05T09:00:00Z'), at('2027-01-28T09:00:00Z'), 1000, 'Europe/London');

  it('marks every Monday and shades every weekend within it', () => {
    expect(axis.ticks.map((tick) => tick.label)).toEqual(['4 Jan', '11 Jan', '18 Jan', '25 Jan']);
    expect(axis.weekends).toHaveLength(3);
    for (const weekend of axis.weekends) expect(weekend.widthPx).toBeCloseTo(axis.x(2 * 86_400_000) - axis.x(0), 6);
  });

  it('keeps a day of the spring change one hour narrower', () => {
    const spring = makeAxis(at('2027-03-24T09:00:00Z'), at('2027-04-02T09:00:00Z'), 1000, 'Europe/London');
    expect(spring.weekends[0]?.widthPx).toBeCloseTo(spring.x(47 * 3_600_000) - spring.x(0), 6);
  });

  it('thins the labels of weeks when they would touch', () => {
    const year = makeAxis(at('2027-01-05T09:00:00Z'), at('2027-12-20T09:00:00Z'), 700, 'Europe/London');
    const gaps = year.ticks.slice(1).map((tick, index) => tick.x - (year.ticks[index]?.x ?? 0));
    expect(Math.min(...gaps)).toBeGreaterThanOrEqual(57);
  });
});

describe('layLines', () => {
  it('has nothing to lay without lines', () => {
    expect(layLines([], 1000)).toBeNull();
    expect(layLines([line({})], 1000)).toBeNull();
  });

  it('puts the same instant at the same place in every row', () => {
    const laid = layLines(
      [
        line({ visits: [visit('2027-01-05T09:00:00Z'), visit('2027-01-20T09:00:00Z')] }),
        line({ visits: [visit('2027-01-20T09:00:00Z'), visit('2027-02-20T09:00:00Z')] }),
      ],
      1000,
    );
    expect(laid?.rows[0]?.discs[1]?.x).toBe(laid?.rows[1]?.discs[0]?.x);
  });

  it('never writes one date over another, however long the dates are', () => {
    const visits = [visit('2027-09-27T09:00:00Z'), visit('2027-09-30T09:00:00Z'), visit('2027-10-20T09:00:00Z')];
    for (let widthPx = 300; widthPx <= 1000; widthPx += 5) {
      const [one, other] = layLines([line({ visits })], widthPx)?.rows[0]?.discs.map(({ label }) => label) ?? [];
      if (one === undefined || other === undefined) throw new Error('Both visits are drawn.');
      const neededPx = (6.3 * (one.date.length + other.date.length)) / 2;
      expect({ widthPx, apart: one.y !== other.y || other.x - one.x >= neededPx }).toEqual({ widthPx, apart: true });
    }
  });

  it('lifts a label that would cover its neighbour, and only that one', () => {
    const laid = layLines(
      [line({ visits: [visit('2027-01-05T09:00:00Z'), visit('2027-01-06T09:00:00Z'), visit('2027-02-20T09:00:00Z')] })],
      1000,
    );
    const heights = laid?.rows[0]?.discs.map((disc) => disc.label.y) ?? [];
    expect(heights[1]).toBeLessThan(heights[0] ?? 0);
    expect(heights[2]).toBe(heights[0]);
  });

  it('stacks steps of two arches that run together and names a step only where its name fits', () => {
    const laid = layLines(
      [
        line({
          visits: [visit('2027-01-05T09:00:00Z'), visit('2027-01-26T09:00:00Z')],
          bars: [
            {
              startMs: at('2027-01-06T09:00:00Z'),
              endMs: at('2027-01-12T09:00:00Z'),
              title: 'Set-up',
              state: 'to-come',
            },
            {
              startMs: at('2027-01-07T09:00:00Z'),
              endMs: at('2027-01-11T09:00:00Z'),
              title: 'Print',
              state: 'to-come',
            },
            {
              startMs: at('2027-01-12T09:00:00Z'),
              endMs: at('2027-01-12T11:00:00Z'),
              title: 'Finish',
              state: 'to-come',
            },
          ],
        }),
      ],
      1000,
    );
    const bars = laid?.rows[0]?.bars ?? [];
    expect(bars.map((bar) => bar.text)).toEqual(['Set-up', 'Print', null]);
    expect(bars[1]?.y).toBeGreaterThan(bars[0]?.y ?? Infinity);
    expect(bars[2]?.y).toBe(bars[0]?.y);
  });

  it('draws the way to the next held visit dashed', () => {
    const laid = layLines(
      [
        line({
          visits: [
            visit('2027-01-05T09:00:00Z'),
            visit('2027-01-12T09:00:00Z'),
            visit('2027-01-20T09:00:00Z', { firm: false }),
          ],
        }),
      ],
      1000,
    );
    expect(laid?.rows[0]?.track.map((piece) => piece.firm)).toEqual([true, false]);
  });
});
