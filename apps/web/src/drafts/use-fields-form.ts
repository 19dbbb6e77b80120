import { useState, type SyntheticEvent } from 'react';
import { fieldErrors } from '../api/errors.js';
import { useFirstProblem } from '../look/first-problem.js';
import { draftLike, placeRefused } from './fields-form-view.js';
import { useKeptDraft } from './use-kept-draft.js';

/** A call on its way, as far as a form follows it. */
export interface Sending<Body, Answer = unknown> {
  readonly error: Error | null;
  readonly isPending: boolean;
  reset: () => void;
  mutateAsync: (body: Body) => Promise<Answer>;
}

interface Form<Draft, Body, Answer> {
  /** Names the form and whom it is about. */
  key: string;
  empty: Draft;
  /** What to send of a draft, null while something is wrong, and what is, by field. */
  read: (draft: Draft) => { body: Body | null; wrong: Partial<Record<keyof Draft, string>> };
  send: Sending<Body, Answer>;
  /** Under what path the service refuses a field, where that is not its name here. */
  paths?: Partial<Record<keyof Draft, string>>;
  onSent?: (answer: Answer) => void;
}

/**
 * A form of texts and choices: its draft survives a reload, what is wrong is said beside its field once it was tried, and
 * what the service refused until the draft is another. The first of them gets the focus. Once it is sent the form is empty
 * again, even where the screen has gone on by then.
 */
export function useFieldsForm<Draft extends { [Field in keyof Draft]: string }, Body, Answer = unknown>({
  key,
  empty,
  read,
  send,
  paths = {},
  onSent,
}: Form<Draft, Body, Answer>) {
  const [draft, change, forget] = useKeptDraft(
    key,
    () => empty,
    (kept) => draftLike(kept, empty),
  );
  const [attempt, setAttempt] = useState(0);
  const { body, wrong } = read(draft);
  const refused = placeRefused(fieldErrors(send.error), empty, paths);
  const errors: Partial<Record<string, string>> = { ...refused.byField, ...(attempt > 0 ? wrong : {}) };
  const form = useFirstProblem(attempt, Object.keys(errors).length > 0);

  async function deliver(sent: Body): Promise<void> {
    let answer: Answer;
    try {
      answer = await send.mutateAsync(sent);
    } catch {
      // The refusal stands in `send.error`; what was typed stays.
      return;
    }
    change(empty);
    forget();
    setAttempt(0);
    onSent?.(answer);
  }

  return {
    form,
    draft,
    errors,
    /** A refusal that does not stand beside a field. */
    refusal: refused.isPlaced ? null : send.error,
    boxOf: (field: keyof Draft & string) => ({
      value: draft[field],
      error: errors[field],
      onChange: ({ currentTarget }: { currentTarget: { value: string } }) => {
        change({ ...draft, [field]: currentTarget.value });
        if (!send.isPending) send.reset();
      },
    }),
    submit: (event: SyntheticEvent): void => {
      event.preventDefault();
      setAttempt((before) => before + 1);
      if (body !== null && !send.isPending) void deliver(body);
    },
  };
}
