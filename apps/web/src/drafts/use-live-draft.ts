import { useMemo, useRef, useState } from 'react';
import { keepDraft, keptDraft } from './kept-drafts.js';
import { clashesOf, rebased, seenBase, takenOver, typedSince, type Typed } from './rebase.js';

/**
 * A form over a record that others may change while it is filled in. What is typed survives a reload of the page; what
 * others save meanwhile is put in where nobody typed, and where both did, both versions wait for a choice.
 *
 * @param key names the form and its record
 * @param latest the record as the service has it now, as a draft
 * @param read takes a draft that was kept, and answers null for anything else
 */
export function useLiveDraft<Draft extends object>(key: string, latest: Draft, read: (kept: unknown) => Draft | null) {
  const [typed, setTyped] = useState<Typed<Draft> | null>(() => keptDraft(key, (kept) => readTyped(kept, read)));
  // An answer comes when it comes: by then more may have been typed than when it was asked for.
  const now = useRef(typed);
  const set = (next: Typed<Draft> | null): void => {
    now.current = next;
    keepDraft(key, next);
    setTyped(next);
  };
  const draft = useMemo(() => (typed === null ? latest : rebased(typed, latest)), [typed, latest]);
  return {
    draft,
    isTyped: typed !== null,
    clashes: typed === null ? [] : clashesOf(typed, latest),
    takenOver: typed === null ? [] : takenOver(typed, latest),
    change: (mine: Draft): void => {
      set(typed === null ? { base: latest, mine } : { base: seenBase(typed, latest), mine });
    },
    keepMine: (): void => {
      set({ base: latest, mine: draft });
    },
    takeTheirs: (): void => {
      const clashing = typed === null ? [] : clashesOf(typed, latest);
      const mine = { ...draft };
      for (const { field, theirs } of clashing) mine[field] = theirs;
      set({ base: latest, mine });
    },
    forget: (): void => {
      set(null);
    },
    /** To be called when the form is sent; what it gives, with the record as it was saved. */
    hold: (): ((saved: Draft) => void) => {
      const sent = { draft, mine: typed?.mine ?? draft };
      return (saved) => {
        if (now.current !== null) set(typedSince(now.current, sent, saved));
      };
    },
  };
}

function readTyped<Draft>(kept: unknown, read: (kept: unknown) => Draft | null): Typed<Draft> | null {
  if (typeof kept !== 'object' || kept === null || !('base' in kept) || !('mine' in kept)) return null;
  const [base, mine] = [read(kept.base), read(kept.mine)];
  return base === null || mine === null ? null : { base, mine };
}
