import { Button, NativeSelect, Textarea, TextInput } from '@mantine/core';
import {
  caseState,
  type CaseState,
  type CaseView,
  type ChangeCaseState,
  type PracticeView,
} from '@archwright/contracts';
import { nextCaseStates } from '@archwright/protocol';
import { useState } from 'react';
import { fieldErrors, hasStatus } from '../api/errors.js';
import { Notice, Refusal } from '../look/notice.js';
import { caseWords as words } from '../words/case.js';
import { useStateEffects } from './use-case.js';

interface Props {
  view: CaseView;
  practice: PracticeView;
  pending: boolean;
  error: unknown;
  onChange: (body: ChangeCaseState) => void;
}

/** Changing the case's state, with everything that would follow shown before it is done. */
export function StateChange({ view, practice, pending, error, onChange }: Props) {
  const [to, setTo] = useState<CaseState | ''>('');
  const [reason, setReason] = useState('');
  const [reviewOn, setReviewOn] = useState('');
  const [clinicId, setClinicId] = useState('');
  const [outside, setOutside] = useState('');
  const [tried, setTried] = useState(false);
  const effects = useStateEffects(view.id, to);
  const errors = fieldErrors(error);
  const shown = effects.isPlaceholderData ? undefined : effects.data;
  // How an enquiry opens is asked for in a form of its own.
  const next = nextCaseStates(view.state).filter((each) => view.state !== 'enquiry' || each !== 'open');
  const takerMissing = to === 'transferred' && clinicId === '' && outside.trim() === '';
  if (next.length === 0) return null;

  function apply(): void {
    setTried(true);
    if (to === '' || reason.trim() === '' || takerMissing) return;
    onChange({
      to,
      reason: reason.trim(),
      reviewOn: reviewOn || null,
      ...(to === 'transferred' ? (clinicId ? { clinicId } : { outsidePractice: outside.trim() }) : {}),
    });
  }

  return (
    <section className="sheet sheet-pad stack-tight no-print" aria-labelledby="state-change">
      <h2 id="state-change">{words.stateTitle}</h2>
      <p>
        {words.stateNow(words.states[view.state])} {view.stateReason}
      </p>
      <NativeSelect
        label={words.changeState}
        value={to}
        error={errors['to']}
        data={[
          { value: '', label: words.chooseState },
          ...next.map((state) => ({ value: state, label: words.next[state] })),
        ]}
        onChange={(event) => {
          setTo(caseState.safeParse(event.currentTarget.value).data ?? '');
        }}
      />
      <Refusal error={effects.error} onRetry={() => void effects.refetch()} />
      {to !== '' && shown ? (
        <>
          <h3>{words.effectsTitle}</h3>
          <dl className="pairs" aria-live="polite">
            {(['bookings', 'labWork', 'objects', 'notices'] as const).map((part) => (
              <div key={part} className="pair">
                <dt>{words.effects[part]}</dt>
                <dd>{shown[part]}</dd>
              </div>
            ))}
          </dl>
          <Textarea
            label={words.reason}
            required
            maxLength={500}
            value={reason}
            error={errors['reason'] ?? (tried && reason.trim() === '' ? words.reasonMissing : null)}
            onChange={(event) => {
              setReason(event.currentTarget.value);
            }}
          />
          {to === 'paused' ? (
            <TextInput
              type="date"
              label={words.reviewOn}
              value={reviewOn}
              error={errors['reviewOn']}
              onChange={(event) => {
                setReviewOn(event.currentTarget.value);
              }}
            />
          ) : null}
          {to === 'transferred' ? (
            <>
              <NativeSelect
                label={words.transferTo}
                value={clinicId}
                error={errors['clinicId']}
                data={[
                  { value: '', label: words.elsewhere },
                  ...practice.clinics.map((clinic) => ({ value: clinic.id, label: clinic.name })),
                ]}
                onChange={(event) => {
                  setClinicId(event.currentTarget.value);
                }}
              />
              {clinicId === '' ? (
                <TextInput
                  label={words.outsidePractice}
                  value={outside}
                  maxLength={500}
                  error={errors['outsidePractice'] ?? (tried && takerMissing ? words.takerMissing : null)}
                  onChange={(event) => {
                    setOutside(event.currentTarget.value);
                  }}
                />
              ) : null}
            </>
          ) : null}
          {hasStatus(error, 412) ? <Notice tone="caution">{words.reload}</Notice> : <Refusal error={error} />}
          <div>
            <Button loading={pending} onClick={apply}>
              {words.next[to]}
            </Button>
          </div>
        </>
      ) : null}
    </section>
  );
}
