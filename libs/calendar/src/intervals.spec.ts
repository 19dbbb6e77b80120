import fc from 'fast-check';
import {
  covers,
  intersect,
  normalise,
  overlapping,
  subtract,
  totalMinutes,
  union,
  type Interval,
} from './intervals.js';

const LAST = 60;
const anyIntervals = fc.array(
  fc.record({ startMs: fc.integer({ min: 0, max: LAST }), endMs: fc.integer({ min: 0, max: LAST }) }),
  { maxLength: 8 },
);
const lists = anyIntervals.map(normalise);
const RUNS = { seed: 20260105, numRuns: 500 };

/** The definition itself, for whole milliseconds: which ones lie in some range. */
function points(intervals: readonly Interval[]): boolean[] {
  return Array.from({ length: LAST + 1 }, (_, ms) => intervals.some((each) => each.startMs <= ms && ms < each.endMs));
}

function isNormalised(list: readonly Interval[]): boolean {
  return list.every((each, index) => each.startMs < each.endMs && (list[index - 1]?.endMs ?? -1) < each.startMs);
}

describe('intervals', () => {
  it('normalises any list without gaining or losing an instant', () => {
    fc.assert(
      fc.property(anyIntervals, (intervals) => {
        const list = normalise(intervals);
        expect(isNormalised(list)).toBe(true);
        expect(points(list)).toEqual(points(intervals));
        expect(normalise(list)).toEqual(list);
      }),
      RUNS,
    );
  });

  it('joins, intersects and subtracts instant by instant, into normalised lists', () => {
    fc.assert(
      fc.property(lists, lists, (a, b) => {
        const [inA, inB] = [points(a), points(b)];
        for (const [list, wanted] of [
          [union(a, b), inA.map((is, ms) => is || inB[ms])],
          [intersect(a, b), inA.map((is, ms) => is && inB[ms])],
          [subtract(a, b), inA.map((is, ms) => is && !inB[ms])],
        ] as const) {
          expect(isNormalised(list)).toBe(true);
          expect(points(list)).toEqual(wanted);
        }
      }),
      RUNS,
    );
  });

  it('obeys the laws of sets', () => {
    fc.assert(
      fc.property(lists, lists, lists, (a, b, c) => {
        expect(union(a, b)).toEqual(union(b, a));
        expect(intersect(a, union(b, c))).toEqual(union(intersect(a, b), intersect(a, c)));
        expect(subtract(a, union(b, c))).toEqual(subtract(subtract(a, b), c));
        expect(union(subtract(a, b), intersect(a, b))).toEqual(a);
        expect(totalMinutes(union(a, b)) + totalMinutes(intersect(a, b))).toBeCloseTo(
          totalMinutes(a) + totalMinutes(b),
          12,
        );
      }),
      RUNS,
    );
  });

  it('covers exactly the instants of the ranges, their ends left out', () => {
    fc.assert(
      fc.property(lists, (list) => {
        expect(points(list).map((_, ms) => covers(list, ms))).toEqual(points(list));
      }),
      RUNS,
    );
  });

  it('finds the ranges that share time with another one', () => {
    fc.assert(
      fc.property(lists, anyIntervals, (list, ranges) => {
        for (const range of ranges.filter(({ startMs, endMs }) => startMs < endMs)) {
          const sharing = list.filter((each) => intersect([each], [range]).length > 0);
          expect(overlapping(list, range)).toEqual(sharing);
        }
      }),
      RUNS,
    );
  });

  it('counts minutes', () => {
    expect(totalMinutes([])).toBe(0);
    expect(
      totalMinutes([
        { startMs: 0, endMs: 90_000 },
        { startMs: 120_000, endMs: 240_000 },
      ]),
    ).toBe(3.5);
  });
});
