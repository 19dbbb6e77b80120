import { clashesOf, rebased, seenBase, takenOver, typedSince } from './rebase.js';

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

it('goes on clashing while somebody types on, and takes over each change once', () => {
  const theirs = { phone: '3', mail: 'b', days: [1, 2] };
  const next = { base: seenBase(typed, theirs), mine: { ...rebased(typed, theirs), days: [5] } };
  expect(clashesOf(next, theirs)).toEqual([{ field: 'phone', mine: '2', theirs: '3' }]);
  expect(takenOver(next, theirs)).toEqual([]);
  expect(rebased(next, theirs)).toEqual({ phone: '2', mail: 'b', days: [5] });
});

describe('once it is saved', () => {
  const sent = { draft: { ...typed.mine, mail: 'b' }, mine: typed.mine };
  const saved = { phone: '+2', mail: 'b', days: [1, 2] };

  it('nothing stays typed, however the service writes it', () => {
    expect(typedSince(typed, sent, saved)).toBeNull();
  });

  it('what was typed while it was on its way stays, over what was saved', () => {
    const since = { base, mine: { ...typed.mine, days: [7] } };
    expect(typedSince(since, sent, saved)).toEqual({ base: saved, mine: { ...saved, days: [7] } });
  });

  it('a field that was typed back meanwhile stays typed back', () => {
    const back = typedSince({ base, mine: base }, sent, saved);
    expect(back?.mine.phone).toBe('1');
    expect(back && clashesOf(back, saved)).toEqual([]);
  });
});
