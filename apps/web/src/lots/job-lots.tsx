import { Button, TextInput } from '@mantine/core';
import { useState, type SyntheticEvent } from 'react';
import { fieldErrors } from '../api/errors.js';
import { useFirstProblem } from '../look/first-problem.js';
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
    <section className="stack-tight" aria-labelledby="job-lots">
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
  const [draft, setDraft] = useState(EMPTY);
  const [attempt, setAttempt] = useState(0);
  const { body, wrong } = toLot(draft);
  const refused = fieldErrors(note.error);
  const errors: Partial<Record<string, string>> = { ...refused, ...(attempt > 0 ? wrong : {}) };
  const form = useFirstProblem(attempt, Object.keys(errors).length > 0);
  const boxOf = (field: keyof LotDraft) => ({
    value: draft[field],
    error: errors[field],
    onChange: ({ currentTarget }: { currentTarget: { value: string } }) => {
      setDraft((before) => ({ ...before, [field]: currentTarget.value }));
      note.reset();
    },
  });

  function submit(event: SyntheticEvent): void {
    event.preventDefault();
    setAttempt((before) => before + 1);
    if (body === null) return;
    note.mutate(body, {
      onSuccess: () => {
        setAttempt(0);
        setDraft(EMPTY);
      },
    });
  }

  return (
    <details className="sheet sheet-pad details">
      <summary>{words.open}</summary>
      <form ref={form} onSubmit={submit} noValidate className="stack-tight">
        <p className="soft">{words.why}</p>
        <TextInput label={words.material} maxLength={120} {...boxOf('material')} />
        <TextInput label={words.lot} maxLength={60} {...boxOf('lot')} />
        <TextInput type="date" label={words.expires} {...boxOf('expiresOn')} />
        <Refusal error={Object.keys(refused).length > 0 ? null : note.error} />
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
