import { Textarea, TextInput } from '@mantine/core';
import { DateField } from './date-field.js';

interface WhenAndWhyDraft {
  readonly day: string;
  readonly time: string;
  readonly reason: string;
}

interface Props<Draft extends WhenAndWhyDraft> {
  draft: Draft;
  words: { readonly day: string; readonly time: string; readonly reason: string; readonly problem: string };
  /** The first day that can be meant. */
  from: string;
  /** Of the time, in seconds. */
  step?: number;
  /** Whether what is typed was tried and can't be meant. */
  isWrong: boolean;
  autoFocus?: boolean;
  onChange: (draft: Draft) => void;
}

/** A day and time, and why, with one sentence on what would be accepted of the three. */
export function WhenAndWhy<Draft extends WhenAndWhyDraft>(props: Props<Draft>) {
  const { draft, words, from, step, isWrong, autoFocus = false, onChange } = props;
  const isReasonMissing = draft.reason.trim() === '';
  return (
    <>
      <div className="row row-end">
        <DateField
          label={words.day}
          min={from}
          value={draft.day}
          error={isWrong && !isReasonMissing}
          autoFocus={autoFocus}
          onChange={(day) => {
            onChange({ ...draft, day });
          }}
        />
        <TextInput
          type="time"
          step={step}
          label={words.time}
          value={draft.time}
          error={isWrong && !isReasonMissing}
          onChange={(event) => {
            onChange({ ...draft, time: event.currentTarget.value });
          }}
        />
      </div>
      <Textarea
        label={words.reason}
        required
        maxLength={500}
        value={draft.reason}
        error={isWrong && isReasonMissing}
        onChange={(event) => {
          onChange({ ...draft, reason: event.currentTarget.value });
        }}
      />
      {isWrong ? (
        <p className="field-error" role="alert">
          {words.problem}
        </p>
      ) : null}
    </>
  );
}
