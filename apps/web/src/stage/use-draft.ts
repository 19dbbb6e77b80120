import type { StageView } from '@archwright/contracts';
import { useMemo, useRef, useState } from 'react';
import { keepDraft, keptDraft } from '../drafts/kept-drafts.js';
import { useLiveDraft } from '../drafts/use-live-draft.js';
import { noRecords, readRecords, recordedBoxes, recordsSince, type CaptureDraft } from './capture-draft.js';
import { captureClashes, fromGroups, readGroups, toGroups } from './capture-groups.js';

/**
 * What is typed at a stage over what is recorded there, also while others record; a reload of the page keeps it.
 * New attempts and records are nobody else's and have nothing under them.
 */
export function useDraft(view: StageView) {
  const recorded = useMemo(() => toGroups(view, recordedBoxes(view)), [view]);
  const live = useLiveDraft(`stage.${view.id}`, recorded, readGroups);
  const key = `stage.${view.id}.records`;
  const [records, setRecords] = useState(() => keptDraft(key, readRecords) ?? noRecords);
  // As in a live draft: an answer looks at what is typed by then.
  const now = useRef(records);
  const setNew = (next: typeof records): void => {
    now.current = next;
    keepDraft(key, next.tracings.length + next.centric.length > 0 ? next : null);
    setRecords(next);
  };
  const typed = useMemo(
    (): CaptureDraft => ({ ...fromGroups(view, live.draft), ...records }),
    [view, live.draft, records],
  );
  return {
    typed,
    clashes: captureClashes(view, live.clashes),
    keepMine: live.keepMine,
    takeTheirs: live.takeTheirs,
    type: ({ tracings, centric, ...boxes }: Partial<CaptureDraft>): void => {
      if (Object.keys(boxes).length > 0) live.change(toGroups(view, { ...typed, ...boxes }));
      if (tracings ?? centric) setNew({ tracings: tracings ?? records.tracings, centric: centric ?? records.centric });
    },
    discard: (): void => {
      live.forget();
      setNew(noRecords);
    },
    /** To be called when it is sent; what it gives, with the stage as it was saved. */
    hold: (): ((saved: StageView) => void) => {
      const settle = live.hold();
      return (saved) => {
        settle(toGroups(saved, recordedBoxes(saved)));
        setNew(recordsSince(now.current, records));
      };
    },
  };
}

/** What the form does with what is typed. */
export type StageDraft = ReturnType<typeof useDraft>;
