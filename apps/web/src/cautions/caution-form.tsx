import { Button, NativeSelect, Textarea } from '@mantine/core';
import type { RecordCaution } from '@archwright/contracts';
import { useState, type SyntheticEvent } from 'react';
import { fieldErrors } from '../api/errors.js';
import { useFirstProblem } from '../look/first-problem.js';
import { Refusal } from '../look/notice.js';
import { isOutrun, Outrun } from '../look/outrun.js';
import { cautionWords as words } from '../words/cautions.js';
import { emptyCaution, readCaution, type CautionErrors } from './cautions-view.js';

interface Props {
  pending: boolean;
  error: unknown;
  onRecord: (body: RecordCaution, done: () => void) => void;
}

const options = (choices: Record<string, string>) => [
  { value: '', label: words.choose },
  ...Object.entries(choices).map(([value, label]) => ({ value, label })),
];

/** What to mind from now on. What was typed stays until the server has it. */
export function CautionForm({ pending, error, onRecord }: Props) {
  const [draft, setDraft] = useState(emptyCaution);
  const [attempt, setAttempt] = useState(0);
  const reading = readCaution(draft);
  const errors: CautionErrors = {
    ...fieldErrors(error),
    ...(attempt > 0 && 'errors' in reading ? reading.errors : {}),
  };
  const form = useFirstProblem(attempt, Object.keys(errors).length > 0);

  function submit(event: SyntheticEvent): void {
    event.preventDefault();
    setAttempt((before) => before + 1);
    if (!('body' in reading)) return;
    onRecord(reading.body, () => {
      setDraft(emptyCaution);
      setAttempt(0);
    });
  }

  return (
    <form ref={form} onSubmit={submit} noValidate className="sheet sheet-pad stack-tight no-print">
      <h2>{words.record}</h2>
      <NativeSelect
        label={words.kind}
        value={draft.kind}
        data={options(words.kinds)}
        error={errors.kind}
        onChange={(event) => {
          setDraft({ ...draft, kind: event.currentTarget.value });
        }}
      />
      {draft.kind === 'material-allergy' ? (
        <NativeSelect
          label={words.material}
          value={draft.material}
          data={options(words.materials)}
          error={errors.material}
          onChange={(event) => {
            setDraft({ ...draft, material: event.currentTarget.value });
          }}
        />
      ) : null}
      <Textarea
        label={words.note}
        description={words.noteHint}
        maxLength={500}
        rows={3}
        value={draft.note}
        error={errors.note}
        onChange={(event) => {
          setDraft({ ...draft, note: event.currentTarget.value });
        }}
      />
      <Outrun error={error} />
      <Refusal error={isOutrun(error) ? null : error} />
      <div>
        <Button type="submit" loading={pending}>
          {words.save}
        </Button>
      </div>
    </form>
  );
}
