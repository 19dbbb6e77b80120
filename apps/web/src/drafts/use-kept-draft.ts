import { useState } from 'react';
import { keepDraft, keptDraft, moveDraft } from './kept-drafts.js';

/**
 * What is typed into a form of something new; it survives a reload of the page.
 *
 * @param key names the form and whom it is about: under another key another draft is shown
 * @returns the draft, and ways to change it, to forget it, and to go on with what is typed under another key
 */
export function useKeptDraft<Draft>(
  key: string,
  empty: () => Draft,
  read: (kept: unknown) => Draft | null,
): [draft: Draft, change: (draft: Draft) => void, forget: () => void, move: (to: string) => void] {
  const load = () => {
    const kept = keptDraft(key, read);
    return { key, draft: kept ?? empty(), isTyped: kept !== null };
  };
  const [held, setHeld] = useState(load);
  const own = held.key === key ? held : load();
  if (own !== held) setHeld(own);
  const change = (draft: Draft): void => {
    keepDraft(key, draft);
    setHeld({ key, draft, isTyped: true });
  };
  const forget = (): void => {
    keepDraft(key, null);
  };
  const move = (to: string): void => {
    if (!own.isTyped) return;
    moveDraft(key, to);
    setHeld({ ...own, key: to });
  };
  return [own.draft, change, forget, move];
}
