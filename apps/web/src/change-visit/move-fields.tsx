import { NativeSelect, TextInput } from '@mantine/core';
import { DateField } from '../look/date-field.js';
import { changeWords as words } from '../words/case.js';
import type { MoveDraft } from './change-draft.js';

/** Stands for a start that is not in the list. */
export const OTHER = 'other';

interface Props {
  draft: MoveDraft;
  /** Null while they are looked for: until then nothing can be chosen, and nothing that was is taken away. */
  choices: { value: string; label: string }[] | null;
  today: string;
  /** Said beside the typed time when it is none. */
  error: string | null;
  onChange: (draft: MoveDraft) => void;
}

export const chosenStart = ({ start }: MoveDraft, choices: Props['choices']): string =>
  choices === null ? '' : start || (choices[0]?.value ?? OTHER);

/** Where the visit goes: a time that leaves the rest alone, or any other. */
export function MoveFields({ draft, choices, today, error, onChange }: Props) {
  const chosen = chosenStart(draft, choices);
  return (
    <>
      <NativeSelect
        label={words.starts}
        description={choices?.length === 0 ? words.noStarts : undefined}
        value={chosen}
        data={
          choices === null ? [{ value: '', label: words.looking }] : [...choices, { value: OTHER, label: words.other }]
        }
        aria-busy={choices === null}
        onChange={(event) => {
          onChange({ ...draft, start: event.currentTarget.value });
        }}
      />
      {chosen === OTHER ? (
        <div className="stack-none">
          <div className="row">
            <DateField
              min={today}
              label={words.otherDay}
              value={draft.date}
              error={error !== null}
              onChange={(date) => {
                onChange({ ...draft, date });
              }}
            />
            <TextInput
              type="time"
              step={300}
              label={words.otherTime}
              value={draft.time}
              error={error !== null}
              onChange={(event) => {
                onChange({ ...draft, time: event.currentTarget.value });
              }}
            />
          </div>
          {error === null ? null : (
            <p className="field-error" role="alert">
              {error}
            </p>
          )}
        </div>
      ) : null}
    </>
  );
}
