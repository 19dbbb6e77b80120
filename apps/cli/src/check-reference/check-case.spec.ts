import { checkCase } from './check-case.js';
import { differences } from './compare.js';
import { readReferenceCases } from './reference-case.js';

// Worked examples of handbooks and papers; each names its source in the file beside its numbers.
const cases = await readReferenceCases('test/reference/statistics');

describe('reference cases', () => {
  it.each(cases.map((reference) => [reference.id, reference] as const))('meets %s', (_, reference) => {
    expect(checkCase(reference)).toEqual({ kind: 'met' });
  });

  it('misses a wrong figure and says where', () => {
    const reference = cases.find(({ id }) => id === 'grubbs-nist');
    if (reference === undefined) throw new Error('the case is gone');
    const wrong = { ...reference, expected: { G: 2.4687, outlierOneSided: true } };
    expect(checkCase(wrong)).toMatchObject({ kind: 'missed', differences: [{ at: 'G', expected: 2.4687 }] });
  });

  it('says that a method is not offered, and counts a refusal as missed', () => {
    const reference = { id: 'x', method: 'mmc', input: {}, expected: {}, tolerance: 0 };
    expect(checkCase(reference)).toEqual({ kind: 'not-offered' });
    const refused = checkCase({ ...reference, method: 'grubbs', input: { values: [1, 1, 1], alpha: 0.05 } });
    expect(JSON.stringify(refused)).toMatch(/missed.*do not vary/);
  });
});

describe('comparison', () => {
  it('takes a tolerance as relative or absolute, whichever is larger', () => {
    expect(differences(1000, 1000.5, 1e-3)).toEqual([]);
    expect(differences(0, 0.0005, 1e-3)).toEqual([]);
    expect(differences(1000, 1002, 1e-3)).toEqual([{ at: '', expected: 1000, got: 1002, difference: 2 }]);
  });

  it('looks into lists and objects, at other tolerances where they are named, and not at what is not expected', () => {
    const got = { a: [1, 2.005], b: { c: 1.2 }, extra: 1 };
    expect(differences({ a: [1, 2], b: { c: 1 } }, got, 0, { a: 0.01, c: 0.5 })).toEqual([]);
    expect(differences({ a: [1], b: null }, got, 1).map(({ at }) => at)).toEqual(['a', 'b']);
  });
});
