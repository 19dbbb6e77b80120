import { safeNext } from './next-view.js';

it.each([
  ['/desk/cases/1?x=2', '/desk/cases/1?x=2'],
  [undefined, '/'],
  ['', '/'],
  ['https://elsewhere.example', '/'],
  ['//elsewhere.example', '/'],
  ['/\\elsewhere.example', '/'],
])('leads from %s to %s', (next, target) => {
  expect(safeNext(next)).toBe(target);
});
