import { pathDifferences } from './path-difference.js';
import type { TreatmentPath } from './path-schema.js';
import { shippedPaths } from './paths/shipped.js';

const [path] = shippedPaths.filter(({ code }) => code === 'conventional');
if (path === undefined) throw new Error('The conventional path is shipped.');
const original: TreatmentPath = path;

it('finds nothing between a path and its copy under another version number', () => {
  for (const shipped of shippedPaths)
    expect(pathDifferences(shipped, { ...structuredClone(shipped), version: 9 })).toEqual([]);
});

it('names the part and the field that changed, with both values', () => {
  const visits = original.visits.map((visit, index) =>
    index === 1
      ? { ...visit, chairMinutes: { ...visit.chairMinutes, typical: visit.chairMinutes.typical + 5 } }
      : visit,
  );
  const code = original.visits[1]?.code ?? '';
  const typical = original.visits[1]?.chairMinutes.typical ?? 0;
  expect(pathDifferences(original, { ...original, visits })).toEqual([
    { kind: 'changed', at: ['visits', code, 'chairMinutes', 'typical'], before: typical, after: typical + 5 },
  ]);
});

it('tells parts that came, went and moved apart, wherever they stand', () => {
  const [first, second, ...rest] = original.visits;
  if (first === undefined || second === undefined) throw new Error('The path has visits.');
  const gone = pathDifferences(original, { ...original, visits: [second, ...rest] });
  expect(gone).toEqual([{ kind: 'removed', at: ['visits', first.code], before: first, after: undefined }]);
  const come = pathDifferences({ ...original, visits: [second, ...rest] }, original);
  expect(come).toEqual([{ kind: 'added', at: ['visits', first.code], before: undefined, after: first }]);
  const moved = pathDifferences(original, { ...original, visits: [second, first, ...rest] });
  expect(moved).toMatchObject([{ kind: 'moved', at: ['visits'] }]);
});

it('says of what is no part that it changed, as a whole', () => {
  expect(pathDifferences(original, { ...original, arches: ['upper'] })).toEqual([
    { kind: 'changed', at: ['arches'], before: ['upper', 'lower'], after: ['upper'] },
  ]);
});
