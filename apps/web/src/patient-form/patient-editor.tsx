import { Button } from '@mantine/core';
import type { CreatePatient, PracticeView } from '@archwright/contracts';
import { useState, type SyntheticEvent } from 'react';
import { fieldErrors } from '../api/errors.js';
import { useFirstProblem } from '../look/first-problem.js';
import { Notice, Refusal } from '../look/notice.js';
import { patientWords } from '../words/desk.js';
import { PatientFields } from './patient-fields.js';
import { readPatient, type PatientDraft } from './patient-form-view.js';

interface Props {
  draft: PatientDraft;
  practice: PracticeView;
  submitLabel: string;
  pending: boolean;
  error: unknown;
  /** Present where there is something typed to drop. */
  onDrop?: (() => void) | undefined;
  onChange: (draft: PatientDraft) => void;
  onSubmit: (body: CreatePatient) => void;
}

/** The form with its refusals in place; it never clears itself. */
export function PatientEditor({ draft, practice, submitLabel, pending, error, onDrop, onChange, onSubmit }: Props) {
  const [attempt, setAttempt] = useState(0);
  const reading = readPatient(draft);
  const local = attempt > 0 && 'errors' in reading ? reading.errors : {};
  const errors = { ...fieldErrors(error), ...local };
  const refused = Object.keys(errors).length;
  const form = useFirstProblem(attempt, refused > 0);
  const ownZones = [...new Set(practice.clinics.map((clinic) => clinic.zone))];
  const zones = [...new Set([draft.zone, ...ownZones, ...Intl.supportedValuesOf('timeZone')])].filter(Boolean);

  function submit(event: SyntheticEvent): void {
    event.preventDefault();
    setAttempt((before) => before + 1);
    if ('body' in reading) onSubmit(reading.body);
  }

  return (
    <form ref={form} onSubmit={submit} noValidate className="stack column">
      {refused > 0 ? <Notice tone="stop">{patientWords.problems(refused)}</Notice> : <Refusal error={error} />}
      <PatientFields draft={draft} zones={zones} today={practice.today} errors={errors} onChange={onChange} />
      <div className="row">
        <Button type="submit" loading={pending}>
          {submitLabel}
        </Button>
        {onDrop ? (
          <Button variant="subtle" disabled={pending} onClick={onDrop}>
            {patientWords.dropTyped}
          </Button>
        ) : null}
      </div>
    </form>
  );
}
