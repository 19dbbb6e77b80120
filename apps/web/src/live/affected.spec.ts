import type { ChangeNews } from '@archwright/contracts';
import { isAffected } from './affected.js';

const news = (...changes: [kind: string, id: string][]): ChangeNews => ({
  isEverything: false,
  changes: changes.map(([kind, id]) => ({ kind, id, actorId: null })),
});

it.each([
  ['a board', ['day', '2027-01-05'], news(['patient', 'p']), true],
  ['the case that changed', ['case', 'a'], news(['case', 'a']), true],
  ['another case', ['case', 'b'], news(['case', 'a']), false],
  ['another case, when something else changed too', ['case', 'b'], news(['case', 'a'], ['stage', 's']), true],
  ['part of the case that changed', ['case', 'a', 'reminders'], news(['case', 'a']), true],
  ['another patient', ['patient', 'q'], news(['patient', 'p']), false],
  ['anything, when nothing happened', ['day', '2027-01-05'], news(), false],
  ['who is signed in', ['session'], { changes: [], isEverything: true }, false],
  ['another case, when too much happened to be told', ['case', 'b'], { changes: [], isEverything: true }, true],
])('decides for %s', (_, queryKey, told, affected) => {
  expect(isAffected(told, { queryKey })).toBe(affected);
});

it('leaves alone what stays as it was answered', () => {
  const offers = { queryKey: ['offers', 'a'], meta: { isLive: false } };
  expect(isAffected(news(['case', 'a']), offers)).toBe(false);
  expect(isAffected({ changes: [], isEverything: true }, offers)).toBe(false);
});
