import { Button, NativeSelect, TextInput } from '@mantine/core';
import type { ReconcileParcel } from '@archwright/contracts';
import { useState, type SyntheticEvent } from 'react';
import { fieldErrors } from '../api/errors.js';
import { useFirstProblem } from '../look/first-problem.js';
import { Refusal } from '../look/notice.js';
import { isOutrun, Outrun } from '../look/outrun.js';
import { parcelWords as words } from '../words/parcels.js';
import { readFindings, type FindingDraft, type ParcelRow } from './parcels-view.js';
import { TwoNames } from './two-names.js';

const FOUND = (['present', 'missing', 'damaged', 'undeclared'] as const).map((value) => ({
  value,
  label: words.findings[value],
}));

interface Props {
  row: ParcelRow;
  pending: boolean;
  error: unknown;
  onCheck: (body: ReconcileParcel) => void;
}

/** The opened parcel, object by object; what the list does not name is added by both its names. */
export function CheckForm({ row, pending, error, onCheck }: Props) {
  const [drafts, setDrafts] = useState<FindingDraft[]>(() =>
    row.objects.map(({ caseNumber, code }) => ({ caseNumber, code, found: '', place: '', note: '' })),
  );
  const [attempt, setAttempt] = useState(0);
  const reading = readFindings(drafts);
  const missing = attempt > 0 && 'missing' in reading ? reading.missing : [];
  const refused = fieldErrors(error);
  const refusedAt = (index: number): string | undefined =>
    refused[`findings.${String(index)}`] ?? refused[`findings.${String(index)}.found`];
  const form = useFirstProblem(attempt, missing.length > 0 || Object.keys(refused).length > 0);

  const change = (index: number, fields: Partial<FindingDraft>): void => {
    setDrafts(drafts.map((draft, at) => (at === index ? { ...draft, ...fields } : draft)));
  };
  function submit(event: SyntheticEvent): void {
    event.preventDefault();
    setAttempt((before) => before + 1);
    if ('body' in reading) onCheck(reading.body);
  }

  return (
    <form ref={form} onSubmit={submit} noValidate className="stack-tight no-print" aria-label={words.check}>
      {drafts.map((draft, index) => {
        const name = words.object(draft.caseNumber, draft.code);
        const isListed = index < row.objects.length;
        return (
          <fieldset key={name} className="stack-tight">
            <legend>{name}</legend>
            <p className="small soft">{isListed ? row.objects[index]?.detail : words.findings.unexpected}</p>
            <div className="thirds">
              <NativeSelect
                aria-label={words.finding(name)}
                value={draft.found}
                data={[
                  { value: '', label: words.findingMissing },
                  ...FOUND.filter(({ value }) => isListed || value !== 'missing'),
                ]}
                error={missing.includes(index) ? words.findingMissing : refusedAt(index)}
                onChange={(event) => {
                  change(index, { found: event.currentTarget.value });
                }}
              />
              <TextInput
                aria-label={words.place(name)}
                placeholder={words.placeShort}
                maxLength={80}
                value={draft.place}
                onChange={(event) => {
                  change(index, { place: event.currentTarget.value });
                }}
              />
              <TextInput
                aria-label={words.note(name)}
                placeholder={words.noteShort}
                maxLength={300}
                value={draft.note}
                onChange={(event) => {
                  change(index, { note: event.currentTarget.value });
                }}
              />
            </div>
          </fieldset>
        );
      })}
      <details className="details">
        <summary>{words.addUnexpected}</summary>
        <TwoNames
          wanted={null}
          onAdd={({ caseNumber, code }) => {
            if (drafts.some((draft) => draft.code === code)) return;
            setDrafts([...drafts, { caseNumber, code, found: 'present', place: '', note: '' }]);
          }}
        />
      </details>
      <p className="soft">{words.amiss}</p>
      <Outrun error={error} />
      <Refusal error={isOutrun(error) ? null : error} />
      <div>
        <Button type="submit" loading={pending}>
          {words.reconcile}
        </Button>
      </div>
    </form>
  );
}
