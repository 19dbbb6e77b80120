import { checkPath, shippedPaths, type TreatmentPath } from '@archwright/protocol';
import { withAnotherLike, withoutVisit, withVisitAt } from './path-shape.js';

const found = shippedPaths.find(({ code }) => code === 'conventional');
if (found === undefined) throw new Error('The conventional path is shipped.');
const path: TreatmentPath = found;
const codes = ({ visits }: TreatmentPath): string[] => visits.map(({ code }) => code);
const [first = '', second = '', ...later] = codes(path);
const last = later.at(-1) ?? '';

it('puts a visit earlier or later, never beyond the ends', () => {
  expect(codes(withVisitAt(path, second, 0))).toEqual([second, first, ...later]);
  expect(codes(withVisitAt(path, first, 99))).toEqual([second, ...later, first]);
  expect(codes(withVisitAt(path, first, -1))).toEqual(codes(path));
  expect(withVisitAt(path, 'none', 1)).toBe(path);
});

it('says what an order breaks that laboratory work needs', () => {
  expect(checkPath(withVisitAt(path, second, 0))).not.toEqual([]);
});

it('adds another like a visit after it, under a code of its own, in a path that stays sound', () => {
  const once = withAnotherLike(path, last);
  expect(once.code).toBe(`${last}a`);
  expect(codes(once.path)).toEqual([...codes(path), `${last}a`]);
  expect(checkPath(once.path)).toEqual([]);
  expect(withAnotherLike(once.path, last).code).toBe(`${last}b`);
  expect(withAnotherLike(path, 'none').path).toBe(path);
});

it('takes a visit out with what hangs on it', () => {
  const review = path.visits.find(({ isReview, chained }) => isReview && chained)?.code ?? '';
  const without = withoutVisit(path, review);
  expect(codes(without)).not.toContain(review);
  expect(JSON.stringify(without)).not.toContain(`"${review}"`);
  expect(checkPath(without)).toEqual([]);

  const [phase] = path.labPhases;
  const cut = withoutVisit(path, phase?.before ?? '');
  const work = phase?.steps.map(({ code }) => code) ?? [];
  const left = new Set(cut.labPhases.flatMap(({ steps }) => steps.map(({ code }) => code)));
  expect(work.filter((code) => left.has(code))).toEqual([]);
  expect(cut.lags.every(({ to }) => to !== phase?.before)).toBe(true);
});
