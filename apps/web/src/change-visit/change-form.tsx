import { Button, NativeSelect, Radio, Textarea, TextInput } from '@mantine/core';
import type { AlternativesView, PreviewCancel, PreviewMove } from '@archwright/contracts';
import { useState } from 'react';
import { changeWords as words } from '../words/case.js';
import { startChoices, typedInstant } from './change-visit-view.js';

const OTHER = 'other';

interface Props {
  appointmentId: string;
  zone: string;
  today: string;
  alternatives: AlternativesView | undefined;
  pending: boolean;
  onMove: (body: PreviewMove) => void;
  onCancel: (body: PreviewCancel) => void;
}

/** What to do with the visit. It only asks for a preview. */
export function ChangeForm({ appointmentId, zone, today, alternatives, pending, onMove, onCancel }: Props) {
  const [what, setWhat] = useState<'move' | 'cancel'>('move');
  const [start, setStart] = useState('');
  const [date, setDate] = useState('');
  const [time, setTime] = useState('');
  const [reason, setReason] = useState('');
  const [then, setThen] = useState<PreviewCancel['then']>('replan');
  const [tried, setTried] = useState(false);
  const choices = alternatives ? startChoices(alternatives, today) : [];
  const chosen = start || (choices[0]?.value ?? OTHER);
  const typed = typedInstant(date, time, alternatives?.zone ?? zone);

  function preview(): void {
    setTried(true);
    const why = reason.trim();
    if (what === 'cancel') {
      if (why !== '') onCancel({ appointmentId, reason: why, then });
      return;
    }
    const note = why === '' ? {} : { reason: why };
    if (chosen === OTHER) {
      if (typed) onMove({ appointmentId, startsAt: typed, ...note });
      return;
    }
    const [startsAt = '', clinicianId = ''] = chosen.split(' ');
    onMove({ appointmentId, startsAt, clinicianId, ...note });
  }

  return (
    <div className="sheet sheet-pad stack">
      <Radio.Group
        label={words.what}
        value={what}
        onChange={(value) => {
          setWhat(value === 'cancel' ? 'cancel' : 'move');
        }}
      >
        <div className="row ticks">
          <Radio value="move" label={words.move} />
          <Radio value="cancel" label={words.cancel} />
        </div>
      </Radio.Group>
      {what === 'move' ? (
        <>
          <NativeSelect
            label={words.starts}
            description={alternatives && choices.length === 0 ? words.noStarts : undefined}
            value={chosen}
            data={[...choices, { value: OTHER, label: words.other }]}
            onChange={(event) => {
              setStart(event.currentTarget.value);
            }}
          />
          {chosen === OTHER ? (
            <div className="row row-end">
              <TextInput
                type="date"
                min={today}
                label={words.otherDay}
                value={date}
                error={tried && !typed ? words.otherMissing : null}
                onChange={(event) => {
                  setDate(event.currentTarget.value);
                }}
              />
              <TextInput
                type="time"
                step={300}
                label={words.otherTime}
                value={time}
                onChange={(event) => {
                  setTime(event.currentTarget.value);
                }}
              />
            </div>
          ) : null}
        </>
      ) : (
        <Radio.Group
          label={words.then}
          value={then}
          onChange={(value) => {
            setThen(value === 'drop-rest' ? 'drop-rest' : 'replan');
          }}
        >
          <div className="row ticks">
            <Radio value="replan" label={words.replan} />
            <Radio value="drop-rest" label={words.dropRest} />
          </div>
        </Radio.Group>
      )}
      <Textarea
        label={words.reason}
        required={what === 'cancel'}
        value={reason}
        error={tried && what === 'cancel' && reason.trim() === '' ? words.reasonMissing : null}
        onChange={(event) => {
          setReason(event.currentTarget.value);
        }}
      />
      <div>
        <Button loading={pending} onClick={preview}>
          {words.preview}
        </Button>
      </div>
    </div>
  );
}
