import { Button, NativeSelect, Textarea } from '@mantine/core';
import type { RecordSoreSpot } from '@archwright/contracts';
import { useEffect, useRef, useState, type SyntheticEvent } from 'react';
import { fieldErrors } from '../api/errors.js';
import { DateField } from '../look/date-field.js';
import { useFirstProblem } from '../look/first-problem.js';
import { Refusal } from '../look/notice.js';
import { aftercareWords, spotWords as words } from '../words/aftercare.js';
import type { RegionState } from './aftercare-view.js';
import { readSpot, type SpotDraft } from './spot-draft.js';

const PAIN = Array.from({ length: 11 }, (_, n) => ({ value: String(n), label: words.painOf(n) }));
const CAUSES = Object.entries(aftercareWords.cause).map(([value, label]) => ({ value, label }));
const choose = { value: '', label: words.choose };

interface Props {
  region: RegionState;
  today: string;
  pending: boolean;
  error: unknown;
  onRecord: (body: RecordSoreSpot) => void;
  onClose: () => void;
}

/** A new sore spot at the place that was chosen. */
export function SpotForm({ region, today, pending, error, onRecord, onClose }: Props) {
  const [draft, setDraft] = useState<SpotDraft>({ foundOn: today, pain: '', suspectedCause: '', note: '' });
  const [attempt, setAttempt] = useState(0);
  const heading = useRef<HTMLHeadingElement>(null);
  const reading = readSpot(region, draft, today);
  const errors: Record<string, string | undefined> = {
    ...fieldErrors(error),
    ...(attempt > 0 && 'errors' in reading ? reading.errors : {}),
  };
  const form = useFirstProblem(attempt, Object.keys(errors).length > 0);
  useEffect(() => {
    // Whoever chose a place in the drawing goes on here; the other places would be a long way to pass by keyboard.
    heading.current?.focus();
  }, [region.arch, region.region]);

  const set = (change: Partial<SpotDraft>): void => {
    setDraft({ ...draft, ...change });
  };
  function submit(event: SyntheticEvent): void {
    event.preventDefault();
    setAttempt((before) => before + 1);
    if ('body' in reading) onRecord(reading.body);
  }

  return (
    <form ref={form} onSubmit={submit} noValidate className="sheet sheet-pad stack-tight no-print">
      <h3 ref={heading} tabIndex={-1}>
        {words.title(aftercareWords.place(region.arch, region.region))}
      </h3>
      <div className="thirds">
        <DateField
          max={today}
          label={words.foundOn}
          value={draft.foundOn}
          error={errors['foundOn']}
          onChange={(foundOn) => {
            set({ foundOn });
          }}
        />
        <NativeSelect
          label={words.pain}
          data={[choose, ...PAIN]}
          value={draft.pain}
          error={errors['pain']}
          onChange={(event) => {
            set({ pain: event.currentTarget.value });
          }}
        />
        <NativeSelect
          label={words.cause}
          data={[choose, ...CAUSES]}
          value={draft.suspectedCause}
          error={errors['suspectedCause']}
          onChange={(event) => {
            set({ suspectedCause: event.currentTarget.value });
          }}
        />
      </div>
      <Textarea
        label={words.note}
        maxLength={500}
        rows={2}
        value={draft.note}
        error={errors['note']}
        onChange={(event) => {
          set({ note: event.currentTarget.value });
        }}
      />
      <Refusal error={error} />
      <div className="row">
        <Button type="submit" loading={pending}>
          {words.save}
        </Button>
        <Button variant="default" onClick={onClose}>
          {words.close}
        </Button>
      </div>
    </form>
  );
}
