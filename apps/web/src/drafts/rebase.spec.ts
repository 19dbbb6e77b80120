import { clashesOf, rebased, takenOver } from './rebase.js';

const base = { phone: '1', mail: 'a', days: [1, 2] };
const typed = { base, mine: { phone: '2', mail: 'a', days: [1, 2] } };

it('keeps what was typed and takes over what others changed beside it', () => {
  const theirs = { phone: '1', mail: 'b', days: [3] };
  expect(rebased(typed, theirs)).toEqual({ phone: '2', mail: 'b', days: [3] });
  expect(takenOver(typed, theirs)).toEqual(['mail', 'days']);
  expect(clashesOf(typed, theirs)).toEqual([]);
});

it('names a field that both changed, with both versions, and keeps the typed one until somebody chooses', () => {
  const theirs = { phone: '3', mail: 'a', days: [1, 2] };
  expect(clashesOf(typed, theirs)).toEqual([{ field: 'phone', mine: '2', theirs: '3' }]);
  expect(rebased(typed, theirs)).toEqual(typed.mine);
  expect(takenOver(typed, theirs)).toEqual([]);
});

it('sees no clash where both typed the same, or only one did', () => {
  expect(clashesOf(typed, { ...base, phone: '2' })).toEqual([]);
  expect(clashesOf(typed, base)).toEqual([]);
});
