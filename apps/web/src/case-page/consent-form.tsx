import { Button } from '@mantine/core';
import { recordConsent, type CaseView, type RecordConsent } from '@archwright/contracts';
import type { SyntheticEvent } from 'react';
import { fieldErrors, hasStatus } from '../api/errors.js';
import { useLiveDraft } from '../drafts/use-live-draft.js';
import { ClashSheet } from '../look/clash-sheet.js';
import { DateField } from '../look/date-field.js';
import { Notice, Refusal } from '../look/notice.js';
import { shortDate } from '../time/wording.js';
import { caseWords as words } from '../words/case.js';

const FIELDS = ['consentOn', 'treatmentApprovedOn', 'medicinesAskedOn'] as const;

const datesOf = ({ consentOn, treatmentApprovedOn, medicinesAskedOn }: CaseView): RecordConsent => ({
  consentOn,
  treatmentApprovedOn,
  medicinesAskedOn,
});

interface Props {
  view: CaseView;
  today: string;
  mayRecord: boolean;
  pending: boolean;
  error: unknown;
  /** @param onSaved hears what was saved: what had been typed by then need not be kept */
  onSave: (body: RecordConsent, onSaved: (saved: CaseView) => void) => void;
}

/** Dated decisions that must stand before the first final impression; recorded by clinicians, seen by all. */
export function ConsentForm({ view, today, mayRecord, pending, error, onSave }: Props) {
  const form = useLiveDraft<RecordConsent>(
    `consent.${view.id}`,
    datesOf(view),
    (kept) => recordConsent.safeParse(kept).data ?? null,
  );
  const errors = fieldErrors(error);
  const day = (on: string | null): string => (on === null ? '' : shortDate(on, today));
  const maySave = form.isTyped && form.clashes.length === 0;
  function save(event: SyntheticEvent): void {
    event.preventDefault();
    if (!maySave || pending) return;
    const settle = form.hold();
    onSave(form.draft, (saved) => {
      settle(datesOf(saved));
    });
  }
  return (
    <section className="sheet sheet-pad stack-tight" aria-labelledby="agreed">
      <h2 id="agreed">{words.agreed}</h2>
      {mayRecord ? (
        <form className="stack-tight" onSubmit={save} noValidate>
          <ClashSheet
            rows={form.clashes.map(({ field, mine, theirs }) => ({
              key: field,
              label: words[field],
              mine: day(mine),
              theirs: day(theirs),
            }))}
            onKeepMine={form.keepMine}
            onTakeTheirs={form.takeTheirs}
          />
          {FIELDS.map((field) => (
            <DateField
              key={field}
              max={today}
              label={words[field]}
              value={form.draft[field] ?? ''}
              error={errors[field]}
              onChange={(day) => {
                form.change({ ...form.draft, [field]: day || null });
              }}
            />
          ))}
          {hasStatus(error, 412) ? <Notice tone="caution">{words.reload}</Notice> : <Refusal error={error} />}
          <div>
            <Button type="submit" variant="default" loading={pending} disabled={!maySave}>
              {words.saveAgreed}
            </Button>
          </div>
        </form>
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
