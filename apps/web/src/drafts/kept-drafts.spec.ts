import { forgetDrafts, isKept, keepDraft, keptDraft, moveDraft } from './kept-drafts.js';

function store(): Storage {
  const items = new Map<string, string>();
  return {
    get length() {
      return items.size;
    },
    key: (index) => [...items.keys()][index] ?? null,
    getItem: (key) => items.get(key) ?? null,
    setItem: (key, value) => void items.set(key, value),
    removeItem: (key) => void items.delete(key),
    clear: () => {
      items.clear();
    },
  };
}
const text = (kept: unknown): string | null => (typeof kept === 'string' ? kept : null);

it('gives back what was typed, and nothing once it is saved', () => {
  const kept = store();
  keepDraft('stage', '67', kept);
  expect(keptDraft('stage', text, kept)).toBe('67');
  expect(isKept('stage', kept)).toBe(true);
  keepDraft('stage', null, kept);
  expect(keptDraft('stage', text, kept)).toBeNull();
  expect(isKept('stage', kept)).toBe(false);
});

it('goes on with a draft under the key of whom it turned out to be about', () => {
  const kept = store();
  keepDraft('case of nobody', 'digital', kept);
  moveDraft('case of nobody', 'case of Alma', kept);
  expect(keptDraft('case of nobody', text, kept)).toBeNull();
  expect(keptDraft('case of Alma', text, kept)).toBe('digital');
  moveDraft('case of nobody', 'case of Alma', kept);
  expect(keptDraft('case of Alma', text, kept)).toBe('digital');
});

it('leaves out a draft that it cannot read any more', () => {
  const kept = store();
  keepDraft('stage', { from: 'an earlier version' }, kept);
  expect(keptDraft('stage', text, kept)).toBeNull();
  kept.setItem('archwright.draft.stage', '{');
  expect(keptDraft('stage', text, kept)).toBeNull();
});

it('forgets every draft at once and touches nothing else', () => {
  const kept = store();
  keepDraft('one', '1', kept);
  keepDraft('two', '2', kept);
  kept.setItem('colours', 'dark');
  forgetDrafts(kept);
  expect([keptDraft('one', text, kept), keptDraft('two', text, kept), kept.getItem('colours')]).toEqual([
    null,
    null,
    'dark',
  ]);
});
