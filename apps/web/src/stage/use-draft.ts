import { useCallback, useRef, useState } from 'react';
import { keepDraft, keptDraft } from '../drafts/kept-drafts.js';
import { emptyDraft, readDraft, type CaptureDraft } from './capture-draft.js';

/** A part that is typed, by itself or out of what stands there; null drops everything. */
export type TypedPart = Partial<CaptureDraft> | null | ((draft: CaptureDraft) => Partial<CaptureDraft>);

/**
 * What is typed at a stage; a reload of the page keeps it.
 *
 * @returns the draft, and a way to change it that stays the same one, so that fields nobody typed in need no new picture
 */
export function useDraft(stageId: string): [CaptureDraft, (part: TypedPart) => void] {
  const key = `stage.${stageId}`;
  const [draft, setDraft] = useState(() => keptDraft(key, readDraft) ?? emptyDraft);
  const latest = useRef(draft);
  const change = useCallback(
    (part: TypedPart): void => {
      const typed = typeof part === 'function' ? part(latest.current) : part;
      const next = typed === null ? null : { ...latest.current, ...typed };
      latest.current = next ?? emptyDraft;
      keepDraft(key, next);
      setDraft(latest.current);
    },
    [key],
  );
  return [draft, change];
}
