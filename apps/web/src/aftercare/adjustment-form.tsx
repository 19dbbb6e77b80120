import { Button, NativeSelect, TextInput } from '@mantine/core';
import type { Arch, RecordAdjustment } from '@archwright/contracts';
import { useState, type SyntheticEvent } from 'react';
import { fieldErrors } from '../api/errors.js';
import { useFirstProblem } from '../look/first-problem.js';
import { Refusal } from '../look/notice.js';
import { adjustmentWords as words, aftercareWords, spotWords } from '../words/aftercare.js';
import { readAdjustment, type AdjustmentDraft } from './spot-draft.js';

const SURFACES = Object.entries(words.surfaces).map(([value, label]) => ({ value, label }));

interface Props {
  /** One arch for a sore spot; of several the person chooses. */
  arches: readonly Arch[];
  soreSpotId: string | null;
  summary: string;
  pending: boolean;
  error: unknown;
  onRecord: (body: RecordAdjustment, done: () => void) => void;
}

/** What was changed on a denture, where and by how much. */
export function AdjustmentForm({ arches, soreSpotId, summary, pending, error, onRecord }: Props) {
  const empty: AdjustmentDraft = { arch: arches[0] ?? '', surface: '', what: '', amount: '' };
  const [draft, setDraft] = useState(empty);
  const [attempt, setAttempt] = useState(0);
  const reading = readAdjustment(soreSpotId, draft);
  const errors: Record<string, string | undefined> = {
    ...fieldErrors(error),
    ...(attempt > 0 && 'errors' in reading ? reading.errors : {}),
  };
  const form = useFirstProblem(attempt, Object.keys(errors).length > 0);
  const field = (name: keyof AdjustmentDraft) => ({
    value: draft[name],
    error: errors[name],
    onChange: (event: { currentTarget: { value: string } }) => {
      setDraft({ ...draft, [name]: event.currentTarget.value });
    },
  });

  function submit(event: SyntheticEvent): void {
    event.preventDefault();
    setAttempt((before) => before + 1);
    if (!('body' in reading)) return;
    onRecord(reading.body, () => {
      setDraft(empty);
      setAttempt(0);
    });
  }

  return (
    <details className="details no-print">
      <summary>{summary}</summary>
      <form ref={form} onSubmit={submit} noValidate className="stack-tight">
        <div className="halves">
          {arches.length > 1 ? (
            <NativeSelect
              label={words.arch}
              data={arches.map((value) => ({ value, label: aftercareWords.arch[value] }))}
              {...field('arch')}
            />
          ) : null}
          <NativeSelect
            label={words.surface}
            data={[{ value: '', label: spotWords.choose }, ...SURFACES]}
            {...field('surface')}
          />
        </div>
        <TextInput label={words.what} maxLength={500} {...field('what')} />
        <TextInput label={words.amount} description={words.amountHint} maxLength={500} {...field('amount')} />
        <Refusal error={error} />
        <div>
          <Button type="submit" loading={pending}>
            {words.save}
          </Button>
        </div>
      </form>
    </details>
  );
}
