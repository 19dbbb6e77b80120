import { useState } from 'react';
import { keepDraft, keptDraft } from './kept-drafts.js';

/** What is typed into a form of something new; it survives a reload of the page. */
export function useKeptDraft<Draft>(
  key: string,
  empty: () => Draft,
  read: (kept: unknown) => Draft | null,
): [draft: Draft, change: (draft: Draft) => void, forget: () => void] {
  const [draft, setDraft] = useState(() => keptDraft(key, read) ?? empty());
  const change = (next: Draft): void => {
    keepDraft(key, next);
    setDraft(next);
  };
  const forget = (): void => {
    keepDraft(key, null);
  };
  return [draft, change, forget];
}
