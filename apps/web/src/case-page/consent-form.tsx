import { Button, TextInput } from '@mantine/core';
import type { CaseView, RecordConsent } from '@archwright/contracts';
import { useState } from 'react';
import { fieldErrors, hasStatus } from '../api/errors.js';
import { Notice, Refusal } from '../look/notice.js';
import { shortDate } from '../time/wording.js';
import { caseWords as words } from '../words/case.js';

const FIELDS = ['consentOn', 'treatmentApprovedOn', 'medicinesAskedOn'] as const;

interface Props {
  view: CaseView;
  today: string;
  mayRecord: boolean;
  pending: boolean;
  error: unknown;
  onSave: (body: RecordConsent) => void;
}

/** Dated decisions that must stand before the first final impression; recorded by clinicians, seen by all. */
export function ConsentForm({ view, today, mayRecord, pending, error, onSave }: Props) {
  const [typed, setTyped] = useState<RecordConsent | null>(null);
  const errors = fieldErrors(error);
  const shown: RecordConsent = typed ?? view;
  return (
    <section className="sheet sheet-pad stack-tight" aria-labelledby="agreed">
      <h2 id="agreed">{words.agreed}</h2>
      {mayRecord ? (
        <>
          {FIELDS.map((field) => (
            <TextInput
              key={field}
              type="date"
              max={today}
              label={words[field]}
              value={shown[field] ?? ''}
              error={errors[field]}
              onChange={(event) => {
                const { consentOn, treatmentApprovedOn, medicinesAskedOn } = shown;
                setTyped({
                  consentOn,
                  treatmentApprovedOn,
                  medicinesAskedOn,
                  [field]: event.currentTarget.value || null,
                });
              }}
            />
          ))}
          {hasStatus(error, 412) ? <Notice tone="caution">{words.reload}</Notice> : <Refusal error={error} />}
          <div>
            <Button
              variant="default"
              loading={pending}
              disabled={typed === null}
              onClick={() => {
                if (typed) onSave(typed);
              }}
            >
              {words.saveAgreed}
            </Button>
          </div>
        </>
      ) : (
        <dl className="pairs">
          {FIELDS.map((field) => (
            <div key={field} className="pair">
              <dt>{words[field]}</dt>
              <dd>{view[field] ? shortDate(view[field], today) : words.notYet}</dd>
            </div>
          ))}
        </dl>
      )}
    </section>
  );
}
