import { seededRandom } from '@archwright/kernel';
import { fisherUpperTail } from '../rates/fisher-tail.js';
import { FEWEST_EARLIER, FEWEST_RECENT, screenRise, type RiseOutcome } from './screen-rise.js';

/** A look each month at the last three, beside all before: how often it said something, and after how many months. */
function looks(seed: number, shareOf: (month: number) => number, months = 24, each = 12): number[] {
  const random = seededRandom(19, seed);
  const counts = Array.from({ length: months }, (_, month) => {
    const happened = Array.from({ length: each }, () => random.nextUnit() < shareOf(month));
    return { events: happened.filter(Boolean).length, size: each };
  });
  const total = (of: readonly { events: number; size: number }[]) => ({
    events: of.reduce((sum, { events }) => sum + events, 0),
    size: of.reduce((sum, { size }) => sum + size, 0),
  });
  const outcomes = counts.map((_, month): RiseOutcome => {
    const from = Math.max(0, month - 2);
    const question = { recent: total(counts.slice(from, month + 1)), earlier: total(counts.slice(0, from)) };
    return screenRise({ ...question, unseen: each }, 200);
  });
  return outcomes.flatMap(({ outcome }, month) => (outcome === 'stands-out' ? [month] : []));
}

describe('the exact tail of two shares', () => {
  it('is that of the lady tasting tea', () => {
    // Fisher (1935), The Design of Experiments: 17 of 70 for three right or more, 1 of 70 for four.
    expect(fisherUpperTail({ events: 3, size: 4 }, { events: 1, size: 4 })).toBeCloseTo(17 / 70, 12);
    expect(fisherUpperTail({ events: 4, size: 4 }, { events: 0, size: 4 })).toBeCloseTo(1 / 70, 12);
    expect(fisherUpperTail({ events: 0, size: 4 }, { events: 4, size: 4 })).toBeCloseTo(1, 12);
    expect(fisherUpperTail({ events: 0, size: 9 }, { events: 0, size: 4 })).toBe(1);
  });

  it('adds up with the tail of the others, and holds for large counts', () => {
    const [first, second] = [
      { events: 130, size: 2000 },
      { events: 410, size: 7000 },
    ];
    const oneMore = fisherUpperTail({ ...second, events: second.events + 1 }, { ...first, events: first.events - 1 });
    expect(fisherUpperTail(first, second) + oneMore).toBeCloseTo(1, 9);
  });
});

describe('a share that may have risen', () => {
  it('is held against nobody more often than set', () => {
    const series = 1_000;
    const alarms = Array.from({ length: series }, (_, seed) => looks(seed, () => 0.1).length).reduce(
      (a, b) => a + b,
      0,
    );
    const cases = series * 24 * 12;
    // Counts are whole, so that the exact tail is mostly smaller than it may be.
    expect(alarms).toBeLessThanOrEqual(cases / 200);
    expect(alarms).toBeGreaterThan((cases / 200) * 0.1);
  });

  it('is found within months when it has trebled', () => {
    const found = Array.from({ length: 200 }, (_, seed) =>
      looks(1_000 + seed, (month) => (month < 12 ? 0.08 : 0.24)).find((month) => month >= 12),
    );
    const delays = found.filter((month) => month !== undefined).map((month) => month - 12);
    expect(delays.length).toBeGreaterThan(180);
    expect(delays.sort((a, b) => a - b)[Math.floor(delays.length / 2)]).toBeLessThanOrEqual(3);
  });

  it('says what is too few', () => {
    const earlier = { events: 2, size: FEWEST_EARLIER - 1 };
    const recent = { events: 9, size: FEWEST_RECENT };
    expect(screenRise({ recent, earlier, unseen: 9 }, 1000)).toEqual({
      outcome: 'too-few',
      size: FEWEST_EARLIER - 1,
      needed: FEWEST_EARLIER,
    });
    const few = { recent: { events: 1, size: 3 }, earlier: { events: 2, size: 400 }, unseen: 3 };
    expect(screenRise(few, 1000)).toMatchObject({ outcome: 'too-few', needed: FEWEST_RECENT });
  });
});
