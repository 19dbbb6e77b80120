import { Button, Radio, Textarea, TextInput } from '@mantine/core';
import type { CompleteStage, SignPrescription } from '@archwright/contracts';
import { useState } from 'react';
import { typedInstant } from '../change-visit/change-visit-view.js';
import { fieldErrors } from '../api/errors.js';
import { Notice, Refusal } from '../look/notice.js';
import { stageWords as words } from '../words/chair.js';

/** Finishing the stage; an open gate refuses it and says what is missing. */
export function CompleteForm(props: { pending: boolean; error: unknown; onComplete: (body: CompleteStage) => void }) {
  const [outcome, setOutcome] = useState<CompleteStage['outcome']>('passed');
  const [note, setNote] = useState('');
  return (
    <section className="sheet sheet-pad stack-tight no-print" aria-labelledby="complete">
      <h2 id="complete">{words.complete}</h2>
      <Radio.Group
        label={words.outcome}
        value={outcome}
        onChange={(value) => {
          setOutcome(value === 'repeat' ? 'repeat' : 'passed');
        }}
      >
        <div className="row ticks">
          <Radio size="md" className="check-line" value="passed" label={words.passed} />
          <Radio size="md" className="check-line" value="repeat" label={words.repeat} />
        </div>
      </Radio.Group>
      <Textarea
        label={words.note}
        maxLength={500}
        value={note}
        onChange={(event) => {
          setNote(event.currentTarget.value);
        }}
      />
      <Refusal error={props.error} />
      <div>
        <Button
          size="md"
          loading={props.pending}
          onClick={() => {
            props.onComplete({ outcome, ...(note.trim() ? { note: note.trim() } : {}) });
          }}
        >
          {words.completeGo}
        </Button>
      </div>
    </section>
  );
}

interface PrescriptionProps {
  zone: string;
  today: string;
  pending: boolean;
  error: unknown;
  signed: boolean;
  onSign: (body: SignPrescription) => void;
}

/** The hand-over to the laboratory. It is signed by the person who sends it. */
export function PrescriptionForm({ zone, today, pending, error, signed, onSign }: PrescriptionProps) {
  const [shade, setShade] = useState('');
  const [mould, setMould] = useState('');
  const [agent, setAgent] = useState('');
  const [day, setDay] = useState(today);
  const [time, setTime] = useState('');
  const [note, setNote] = useState('');
  const [tried, setTried] = useState(false);
  const at = typedInstant(day, time, zone);
  const errors = fieldErrors(error);
  if (signed) return <Notice tone="go">{words.signed}</Notice>;

  function sign(): void {
    setTried(true);
    if (agent.trim() === '' || at === null) return;
    onSign({
      ...(shade.trim() ? { shade: shade.trim() } : {}),
      ...(mould.trim() ? { mould: mould.trim() } : {}),
      disinfection: { agent: agent.trim(), at },
      ...(note.trim() ? { note: note.trim() } : {}),
    });
  }
  const text = (value: string, set: (value: string) => void, path: string) => ({
    value,
    error: errors[path],
    onChange: (event: { currentTarget: { value: string } }) => {
      set(event.currentTarget.value);
    },
  });

  return (
    <details className="sheet sheet-pad details no-print">
      <summary>{words.prescription}</summary>
      <div className="stack-tight">
        <div className="halves">
          <TextInput label={words.shade} maxLength={60} {...text(shade, setShade, 'shade')} />
          <TextInput label={words.mould} maxLength={60} {...text(mould, setMould, 'mould')} />
        </div>
        <TextInput
          label={words.agent}
          required
          maxLength={80}
          {...text(agent, setAgent, 'disinfection.agent')}
          error={errors['disinfection.agent'] ?? (tried && agent.trim() === '' ? words.agentMissing : null)}
        />
        <div className="row row-end">
          <TextInput type="date" label={words.at} max={today} required {...text(day, setDay, 'disinfection.at')} />
          <TextInput
            type="time"
            aria-label={words.at}
            {...text(time, setTime, 'disinfection.at')}
            error={errors['disinfection.at'] ?? (tried && at === null ? words.atMissing : null)}
          />
        </div>
        <Textarea label={words.note} maxLength={1000} {...text(note, setNote, 'note')} />
        <Refusal error={error} />
        <div>
          <Button size="md" loading={pending} onClick={sign}>
            {words.sign}
          </Button>
        </div>
      </div>
    </details>
  );
}
