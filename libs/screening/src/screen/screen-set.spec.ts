import { normalValues } from './normal-values.builder.js';
import { FEWEST_SETS, judgeSet, learnSets, screenSet } from './screen-set.js';

/** Widths of faces: two thirds of each is the face, one third its own. */
const faces = (count: number, seed: number): number[][] => {
  const size = normalValues(count, seed, 0);
  const own = [1, 2, 3].map((stream) => normalValues(count, seed, stream));
  return size.map((face, at) => own.map((values, part) => 30 + 10 * part + 2 * face + values[at]!));
};

describe('values that belong together', () => {
  it('give false alarms about as rarely as set', () => {
    const [groups, looked, perAlarm] = [30, 400, 200];
    let alarms = 0;
    for (let group = 0; group < groups; group++) {
      const known = learnSets(faces(60, 100 + group));
      if (known === null) throw new Error('Drawn faces do not lie in a plane.');
      for (const mine of faces(looked, 500 + group))
        if (judgeSet(mine, known, perAlarm).outcome === 'stands-out') alarms++;
    }
    const asSet = (groups * looked) / perAlarm;
    expect(alarms).toBeGreaterThan(asSet * 0.6);
    expect(alarms).toBeLessThan(asSet * 1.5);
  });

  it('stand out together where each is ordinary, and say which fits least', () => {
    const others = faces(120, 7);
    const centre = [30, 40, 50];
    expect(screenSet(centre, others, 1000)).toMatchObject({ outcome: 'fine', size: 120 });
    // Two are wide by two spreads of about 2.2, the third narrow by two: each by itself is nothing.
    const found = screenSet([34.4, 44.4, 45.6], others, 1000);
    expect(found).toMatchObject({ outcome: 'stands-out', leastFitting: 2 });
    if (found.outcome !== 'stands-out') throw new Error('It stands out.');
    expect(found.expected).toBeGreaterThan(52);
  });

  it('are not spoilt by a quarter of wild sets', () => {
    const others = faces(120, 9).map((set, at) => (at % 5 === 0 ? [90, 10, 200] : set));
    expect(screenSet([34.4, 44.4, 45.6], others, 1000).outcome).toBe('stands-out');
    expect(screenSet([31, 41, 51], others, 1000).outcome).toBe('fine');
  });

  it('say what is too few, and that values in a plane tell nothing', () => {
    expect(screenSet([1, 2], faces(FEWEST_SETS - 1, 1), 1000)).toEqual({
      outcome: 'too-few',
      size: FEWEST_SETS - 1,
      needed: FEWEST_SETS,
    });
    const plane = normalValues(50, 3).map((value) => [value, 2 * value]);
    expect(screenSet([1, 5], plane, 1000)).toEqual({ outcome: 'no-spread', size: 50 });
  });
});
