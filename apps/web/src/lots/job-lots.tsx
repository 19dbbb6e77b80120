import { Button, TextInput } from '@mantine/core';
import { useFieldsForm } from '../drafts/use-fields-form.js';
import { DateField } from '../look/date-field.js';
import { Refusal } from '../look/notice.js';
import { lotWords } from '../words/lots.js';
import { CaseLots } from './case-lots.js';
import { toLot, type LotDraft } from './lots-view.js';
import { useCaseLots, useNoteLot } from './use-lots.js';

const { used: words } = lotWords;
const EMPTY: LotDraft = { material: '', lot: '', expiresOn: '' };

interface Props {
  stepId: string;
  caseId: string;
  zone: string;
  today: string;
  /** Once the work has begun, for who does it. */
  mayNote: boolean;
}

/** Lots of material that one job used, and a way to note another. */
export function JobLots({ stepId, caseId, zone, today, mayNote }: Props) {
  const known = useCaseLots(caseId);
  const lots = known.data?.items.filter(({ labStepId }) => labStepId === stepId) ?? [];
  return (
    <section className="stack-tight column" aria-labelledby="job-lots">
      <h2 id="job-lots">{words.title}</h2>
      <Refusal error={known.error} onRetry={() => void known.refetch()} />
      {known.data && lots.length === 0 ? <p className="soft">{words.none}</p> : null}
      {lots.length > 0 ? <CaseLots lots={lots} zone={zone} today={today} /> : null}
      {mayNote ? <NoteLot stepId={stepId} /> : null}
    </section>
  );
}

function NoteLot({ stepId }: { stepId: string }) {
  const note = useNoteLot(stepId);
  const { form, refusal, boxOf, fieldOf, submit } = useFieldsForm({
    key: `lot.${stepId}`,
    empty: EMPTY,
    read: toLot,
    send: note,
  });
  return (
    <details className="sheet sheet-pad details">
      <summary>{words.open}</summary>
      <form ref={form} onSubmit={submit} noValidate className="stack-tight">
        <p className="soft">{words.why}</p>
        <TextInput label={words.material} maxLength={120} {...boxOf('material')} />
        <TextInput label={words.lot} maxLength={60} {...boxOf('lot')} />
        <DateField label={words.expires} {...fieldOf('expiresOn')} />
        <Refusal error={refusal} />
        <p role="status" className={note.data ? 'notice notice-go' : 'unseen'}>
          {note.data ? words.saved(note.data.material, note.data.lot) : ''}
        </p>
        <div>
          <Button type="submit" loading={note.isPending}>
            {words.save}
          </Button>
        </div>
      </form>
    </details>
  );
}
