import fc from 'fast-check';
import { CalendarNumberError } from './errors.js';
import { intersect, normalise, totalMinutes } from './intervals.js';
import { addWorkingMinutes } from './working-minutes.js';

const MINUTE = 60_000;
const range = (start: number, end: number) => ({ startMs: start * MINUTE, endMs: end * MINUTE });
const OPEN = [range(0, 60), range(100, 160)];

describe('working minutes', () => {
  it.each([
    [0, 60, 60],
    [0, 61, 101],
    [30, 30, 60],
    [60, 10, 110],
    [80, 0, 100],
    [159, 1, 160],
  ])('from minute %i, %i minutes of work end at minute %i', (from, minutes, end) => {
    expect(addWorkingMinutes(OPEN, from * MINUTE, minutes)).toBe(end * MINUTE);
  });

  it('are not finished when the calendar ends before', () => {
    expect(addWorkingMinutes(OPEN, 0, 121)).toBeUndefined();
    expect(addWorkingMinutes(OPEN, 160 * MINUTE, 0)).toBeUndefined();
    expect(() => addWorkingMinutes(OPEN, 0, -1)).toThrow(CalendarNumberError);
  });

  it('fill exactly the open time up to the end found', () => {
    const opens = fc
      .array(fc.tuple(fc.nat(200), fc.nat(40)), { maxLength: 6 })
      .map((all) => normalise(all.map(([start, length]) => range(start, start + length))));
    fc.assert(
      fc.property(opens, fc.nat(200), fc.integer({ min: 1, max: 80 }), (open, from, minutes) => {
        const endMs = addWorkingMinutes(open, from * MINUTE, minutes);
        const until = (ms: number): number => totalMinutes(intersect(open, [{ startMs: from * MINUTE, endMs: ms }]));
        if (endMs === undefined) expect(until(1000 * MINUTE)).toBeLessThan(minutes);
        else {
          expect(until(endMs)).toBe(minutes);
          expect(until(endMs - 1)).toBeLessThan(minutes);
        }
      }),
      { seed: 20260105, numRuns: 500 },
    );
  });
});
