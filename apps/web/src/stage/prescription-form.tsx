import { Button, Textarea, TextInput } from '@mantine/core';
import type { SignPrescription, StageView } from '@archwright/contracts';
import { useState } from 'react';
import { typedMinute } from '../change-visit/change-visit-view.js';
import { fieldErrors } from '../api/errors.js';
import { Notice, Refusal } from '../look/notice.js';
import { dateAndTime } from '../time/wording.js';
import { stageWords as words } from '../words/chair.js';

interface Props {
  zone: string;
  today: string;
  pending: boolean;
  error: unknown;
  /** The hand-over in force, if it was signed. */
  inForce: NonNullable<StageView['prescription']>;
  onSign: (body: SignPrescription) => void;
}

/** The hand-over to the laboratory. It is signed by the person who sends it; a later one takes its place. */
export function PrescriptionForm({ zone, today, pending, error, inForce, onSign }: Props) {
  const [shade, setShade] = useState('');
  const [mould, setMould] = useState('');
  const [agent, setAgent] = useState('');
  const [day, setDay] = useState(today);
  const [time, setTime] = useState('');
  const [note, setNote] = useState('');
  const [tried, setTried] = useState(false);
  const at = typedMinute(day, time, zone);
  const errors = fieldErrors(error);

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
    <section className="sheet sheet-pad stack-tight no-print" aria-labelledby="prescription">
      <h2 id="prescription">{words.prescription}</h2>
      {inForce.signedAt === null ? null : (
        <Notice tone="go">{words.signed(dateAndTime(inForce.signedAt, zone, today), inForce.signedBy ?? '')}</Notice>
      )}
      <details className="details" key={inForce.signedAt ?? 'unsigned'}>
        <summary>{inForce.signedAt === null ? words.signOpen : words.signAnew}</summary>
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
    </section>
  );
}
