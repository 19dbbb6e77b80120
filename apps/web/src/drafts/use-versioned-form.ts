import { useState, type SyntheticEvent } from 'react';
import { fieldErrors, hasStatus } from '../api/errors.js';
import { useFirstProblem } from '../look/first-problem.js';
import { differences, type DraftPart } from './differences.js';
import { useVersionedDraft } from './use-versioned-draft.js';

/** A change on its way, as far as a form follows it. */
interface Saving {
  readonly error: Error | null;
  readonly reset: () => void;
}

interface Settings<Draft, Body, Errors> {
  /** Of the record as the service has it now. */
  version: number;
  /** The record as a draft, shown while nothing is typed. */
  start: Draft;
  read: (draft: Draft) => { body: Body } | { errors: Errors };
  saving: Saving;
  save: (body: Body, version: number, onSuccess: () => void) => void;
  /** The draft in words, always in the same parts: what differs between two versions is shown side by side. */
  tell: (draft: Draft) => readonly DraftPart[];
  /** Fetches the record anew; answers its version, or undefined when that failed. */
  refetch: () => Promise<number | undefined>;
}

/**
 * A form that is saved whole over one version of a record: what is wrong is said from the first attempt on, and where
 * somebody else has saved meanwhile, the person chooses between both versions.
 */
export function useVersionedForm<Draft, Body, Errors>(settings: Settings<Draft, Body, Errors>) {
  const { version, start, read, saving, save, tell, refetch } = settings;
  const kept = useVersionedDraft<Draft>(version);
  const [attempt, setAttempt] = useState(0);
  const draft = kept.typed ?? start;
  const reading = read(draft);
  const errors = attempt > 0 && 'errors' in reading ? reading.errors : null;
  const form = useFirstProblem(attempt, errors !== null || Object.keys(fieldErrors(saving.error)).length > 0);
  const isStale = hasStatus(saving.error, 412);

  async function settle(keep: boolean): Promise<void> {
    const fresh = await refetch();
    if (keep) kept.keepOver(fresh ?? version);
    else kept.forget();
    saving.reset();
  }
  return {
    form,
    draft,
    isTyped: kept.typed !== null,
    change: kept.type,
    /** Null before the first attempt and when nothing is wrong. */
    errors,
    refusal: isStale ? null : saving.error,
    /** Somebody else's version beside what is typed, and what to do about it; null while there is none. */
    clash: isStale
      ? {
          rows: differences(tell(draft), tell(start)),
          onKeepMine: () => void settle(true),
          onTakeTheirs: () => void settle(false),
        }
      : null,
    submit: (event: SyntheticEvent): void => {
      event.preventDefault();
      setAttempt((before) => before + 1);
      if (!('body' in reading)) return;
      save(reading.body, kept.version, () => {
        kept.forget();
        setAttempt(0);
      });
    },
  };
}
