import { Button } from '@mantine/core';
import type { SetupRecord, SetupView } from '@archwright/contracts';
import { useState, type SyntheticEvent } from 'react';
import { fieldErrors } from '../api/errors.js';
import { useFirstProblem } from '../look/first-problem.js';
import { Notice, Refusal } from '../look/notice.js';
import { setupWords as words } from '../words/setup.js';
import { readDraft, type RecordDraft } from './record-draft.js';
import { RecordField } from './record-field.js';
import { RECORD_FIELDS } from './record-fields.js';

interface Props {
  setup: SetupView;
  draft: RecordDraft;
  isNew: boolean;
  pending: boolean;
  error: unknown;
  onChange: (draft: RecordDraft) => void;
  onShow: (record: SetupRecord) => void;
}

/** The fields of a record; what is sent first is only looked at. */
export function RecordForm({ setup, draft, isNew, pending, error, onChange, onShow }: Props) {
  const [attempt, setAttempt] = useState(0);
  const reading = readDraft(draft);
  const errors = { ...fieldErrors(error), ...(attempt > 0 && 'errors' in reading ? reading.errors : {}) };
  const refused = Object.keys(errors).length;
  const form = useFirstProblem(attempt, refused > 0);

  function submit(event: SyntheticEvent): void {
    event.preventDefault();
    setAttempt((before) => before + 1);
    if ('record' in reading) onShow(reading.record);
  }

  return (
    <form ref={form} onSubmit={submit} noValidate className="stack column">
      {refused > 0 ? <Notice tone="stop">{words.problems(refused)}</Notice> : <Refusal error={error} />}
      {RECORD_FIELDS[draft.kind].map((field) => (
        <RecordField
          key={field.key}
          field={field}
          setup={setup}
          draft={draft}
          isNew={isNew}
          errors={errors}
          onChange={(value) => {
            onChange({ ...draft, [field.key]: value });
          }}
        />
      ))}
      <div>
        <Button type="submit" variant="default" loading={pending}>
          {words.show}
        </Button>
      </div>
    </form>
  );
}
