import { useState, type SyntheticEvent } from 'react';
import { fieldErrors } from '../api/errors.js';
import { useFirstProblem } from '../look/first-problem.js';
import { useKeptDraft } from './use-kept-draft.js';

interface Sending<Body> {
  readonly error: Error | null;
  reset: () => void;
  mutate: (body: Body, then: { onSuccess: () => void }) => void;
}

interface Form<Draft, Body> {
  /** Names the form and whom it is about. */
  key: string;
  empty: Draft;
  /** What to send of a draft, null while something is wrong, and what is, by field. */
  read: (draft: Draft) => { body: Body | null; wrong: Partial<Record<keyof Draft, string>> };
  send: Sending<Body>;
}

/**
 * A small form of texts and choices: its draft survives a reload, what is wrong is said beside its field once it was tried,
 * and what the service refused until the draft is another. Once it is sent the form is empty again.
 */
export function useFieldsForm<Draft extends { [Field in keyof Draft]: string }, Body>({
  key,
  empty,
  read,
  send,
}: Form<Draft, Body>) {
  const [draft, change, forget] = useKeptDraft(
    key,
    () => empty,
    (kept) => draftLike(kept, empty),
  );
  const [attempt, setAttempt] = useState(0);
  const { body, wrong } = read(draft);
  const refused = fieldErrors(send.error);
  const errors: Partial<Record<string, string>> = { ...refused, ...(attempt > 0 ? wrong : {}) };
  const form = useFirstProblem(attempt, Object.keys(errors).length > 0);

  return {
    form,
    errors,
    /** A refusal that stands beside no field. */
    refusal: Object.keys(refused).length > 0 ? null : send.error,
    boxOf: (field: keyof Draft & string) => ({
      value: draft[field],
      error: errors[field],
      onChange: ({ currentTarget }: { currentTarget: { value: string } }) => {
        change({ ...draft, [field]: currentTarget.value });
        send.reset();
      },
    }),
    submit: (event: SyntheticEvent): void => {
      event.preventDefault();
      setAttempt((before) => before + 1);
      if (body === null) return;
      send.mutate(body, {
        onSuccess: () => {
          setAttempt(0);
          change(empty);
          forget();
        },
      });
    },
  };
}

/** Null for what an earlier version kept. */
function draftLike<Draft extends { [Field in keyof Draft]: string }>(kept: unknown, empty: Draft): Draft | null {
  if (typeof kept !== 'object' || kept === null) return null;
  const texts = new Map(Object.entries(kept));
  return Object.keys(empty).every((field) => typeof texts.get(field) === 'string') ? (kept as Draft) : null;
}
