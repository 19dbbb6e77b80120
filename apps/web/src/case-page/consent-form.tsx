import { Button, TextInput } from '@mantine/core';
import { recordConsent, type CaseView, type RecordConsent } from '@archwright/contracts';
import { fieldErrors, hasStatus } from '../api/errors.js';
import { useLiveDraft } from '../drafts/use-live-draft.js';
import { ClashSheet } from '../look/clash-sheet.js';
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
  /** @param onSaved what was typed is saved and need not be kept */
  onSave: (body: RecordConsent, onSaved: () => void) => void;
}

/** Dated decisions that must stand before the first final impression; recorded by clinicians, seen by all. */
export function ConsentForm({ view, today, mayRecord, pending, error, onSave }: Props) {
  const { consentOn, treatmentApprovedOn, medicinesAskedOn } = view;
  const form = useLiveDraft<RecordConsent>(
    `consent.${view.id}`,
    { consentOn, treatmentApprovedOn, medicinesAskedOn },
    (kept) => recordConsent.safeParse(kept).data ?? null,
  );
  const errors = fieldErrors(error);
  const day = (on: string | null): string => (on === null ? '' : shortDate(on, today));
  return (
    <section className="sheet sheet-pad stack-tight" aria-labelledby="agreed">
      <h2 id="agreed">{words.agreed}</h2>
      {mayRecord ? (
        <>
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
            <TextInput
              key={field}
              type="date"
              max={today}
              label={words[field]}
              value={form.draft[field] ?? ''}
              error={errors[field]}
              onChange={(event) => {
                form.change({ ...form.draft, [field]: event.currentTarget.value || null });
              }}
            />
          ))}
          {hasStatus(error, 412) ? <Notice tone="caution">{words.reload}</Notice> : <Refusal error={error} />}
          <div>
            <Button
              variant="default"
              loading={pending}
              disabled={!form.isTyped || form.clashes.length > 0}
              onClick={() => {
                onSave(form.draft, form.forget);
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
