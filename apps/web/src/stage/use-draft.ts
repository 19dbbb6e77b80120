import { useState } from 'react';
import { keepDraft, keptDraft } from '../drafts/kept-drafts.js';
import { emptyDraft, readDraft, type CaptureDraft } from './capture-draft.js';

/** What is typed at a stage; a reload of the page keeps it. */
export function useDraft(stageId: string): [CaptureDraft, (change: Partial<CaptureDraft> | null) => void] {
  const key = `stage.${stageId}`;
  const [draft, setDraft] = useState(() => keptDraft(key, readDraft) ?? emptyDraft);
  const change = (part: Partial<CaptureDraft> | null): void => {
    const next = part === null ? null : { ...draft, ...part };
    keepDraft(key, next);
    setDraft(next ?? emptyDraft);
  };
  return [draft, change];
}
