import { Button, NativeSelect, Textarea, TextInput } from '@mantine/core';
import type { CaseView, ChangeCaseState, PracticeView } from '@archwright/contracts';
import { nextCaseStates } from '@archwright/protocol';
import { hasStatus } from '../api/errors.js';
import { useFieldsForm, type Sending } from '../drafts/use-fields-form.js';
import { DateField } from '../look/date-field.js';
import { Notice, Refusal } from '../look/notice.js';
import { caseWords as words } from '../words/case.js';
import { toldWords } from '../words/told.js';
import { EMPTY_CHANGE, readStateChange } from './state-change-view.js';
import { useStateEffects } from './use-case.js';

interface Props {
  view: CaseView;
  practice: PracticeView;
  change: Sending<ChangeCaseState>;
}

/** Changing the case's state, with everything that would follow shown before it is done. */
export function StateChange({ view, practice, change }: Props) {
  // How an enquiry opens is asked for in a form of its own.
  const next = nextCaseStates(view.state).filter((each) => view.state !== 'enquiry' || each !== 'open');
  const { form, draft, refusal, boxOf, fieldOf, submit } = useFieldsForm({
    key: `state.${view.id}.${view.state}`,
    empty: EMPTY_CHANGE,
    read: readStateChange,
    send: change,
    paths: { outside: 'outsidePractice' },
  });
  const to = next.find((state) => state === draft.to);
  const effects = useStateEffects(view, to);
  const shown = effects.isPlaceholderData ? undefined : effects.data;
  if (next.length === 0) return null;

  return (
    <section className="sheet sheet-pad stack-tight no-print" aria-labelledby="state-change">
      <h2 id="state-change">{words.stateTitle}</h2>
      <p>
        {words.stateNow(words.states[view.state])} {view.stateReason}
      </p>
      <form ref={form} onSubmit={submit} noValidate className="stack-tight">
        <NativeSelect
          label={words.changeState}
          data={[
            { value: '', label: words.chooseState },
            ...next.map((state) => ({ value: state, label: words.next[state] })),
          ]}
          {...boxOf('to')}
        />
        <Refusal error={effects.error} onRetry={() => void effects.refetch()} />
        {to !== undefined && shown ? (
          <>
            <h3>{words.effectsTitle}</h3>
            <dl className="pairs" aria-live="polite">
              {(['bookings', 'labWork', 'objects', 'notices'] as const).map((part) => (
                <div key={part} className="pair">
                  <dt>{words.effects[part]}</dt>
                  <dd>{shown[part].map(({ told }) => toldWords(told)).join(' ')}</dd>
                </div>
              ))}
            </dl>
            <Textarea label={words.reason} required maxLength={500} {...boxOf('reason')} />
            {to === 'paused' ? <DateField label={words.reviewOn} {...fieldOf('reviewOn')} /> : null}
            {to === 'transferred' ? (
              <>
                <NativeSelect
                  label={words.transferTo}
                  data={[
                    { value: '', label: words.elsewhere },
                    ...practice.clinics.map((clinic) => ({ value: clinic.id, label: clinic.name })),
                  ]}
                  {...boxOf('clinicId')}
                />
                {draft.clinicId === '' ? (
                  <TextInput label={words.outsidePractice} maxLength={500} {...boxOf('outside')} />
                ) : null}
              </>
            ) : null}
            {hasStatus(refusal, 412) ? <Notice tone="caution">{words.reload}</Notice> : <Refusal error={refusal} />}
            <div>
              <Button type="submit" loading={change.isPending}>
                {words.next[to]}
              </Button>
            </div>
          </>
        ) : null}
      </form>
    </section>
  );
}
