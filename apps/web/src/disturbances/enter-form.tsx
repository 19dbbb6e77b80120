import { Button, NativeSelect, Textarea, TextInput } from '@mantine/core';
import type { DisturbanceSubjects, EnterDisturbance } from '@archwright/contracts';
import { useState, type SyntheticEvent } from 'react';
import { useFirstProblem } from '../look/first-problem.js';
import { disturbanceWords } from '../words/disturbances.js';
import { subjectGroups, toEntry, type EntryDraft } from './disturbance-view.js';

const words = disturbanceWords.enter;

interface Props {
  subjects: DisturbanceSubjects;
  today: string;
  pending: boolean;
  onEnter: (body: EnterDisturbance) => void;
}

/** What falls away, and from when to when. It only asks who is affected. */
export function EnterForm({ subjects, today, pending, onEnter }: Props) {
  const [draft, setDraft] = useState<EntryDraft>({
    subject: '',
    fromDay: today,
    fromTime: '08:00',
    untilDay: today,
    untilTime: '18:00',
    reason: '',
  });
  const [attempt, setAttempt] = useState(0);
  const entry = toEntry(draft, subjects);
  const isWrong = attempt > 0 && entry === null;
  const form = useFirstProblem(attempt, entry === null);
  const set = (change: Partial<EntryDraft>): void => {
    setDraft((before) => ({ ...before, ...change }));
  };

  function send(event: SyntheticEvent): void {
    event.preventDefault();
    setAttempt((before) => before + 1);
    if (entry !== null) onEnter(entry);
  }

  return (
    <form ref={form} className="sheet sheet-pad stack" onSubmit={send} noValidate>
      <h2>{words.title}</h2>
      <NativeSelect
        label={words.what}
        required
        value={draft.subject}
        error={isWrong && draft.subject === ''}
        data={[{ value: '', label: words.choose }, ...subjectGroups(subjects)]}
        onChange={(event) => {
          set({ subject: event.currentTarget.value });
        }}
      />
      <div className="row">
        <DayAndTime
          labels={[words.fromDay, words.fromTime]}
          day={draft.fromDay}
          time={draft.fromTime}
          today={today}
          onChange={(fromDay, fromTime) => {
            set({ fromDay, fromTime });
          }}
        />
        <DayAndTime
          labels={[words.untilDay, words.untilTime]}
          day={draft.untilDay}
          time={draft.untilTime}
          today={today}
          onChange={(untilDay, untilTime) => {
            set({ untilDay, untilTime });
          }}
        />
      </div>
      <Textarea
        label={words.reason}
        description={words.reasonHint}
        required
        maxLength={500}
        value={draft.reason}
        error={isWrong && draft.reason.trim() === ''}
        onChange={(event) => {
          set({ reason: event.currentTarget.value });
        }}
      />
      {isWrong ? (
        <p className="field-error" role="alert">
          {words.problem}
        </p>
      ) : null}
      <div>
        <Button type="submit" loading={pending}>
          {words.go}
        </Button>
      </div>
    </form>
  );
}

interface DayAndTimeProps {
  labels: [day: string, time: string];
  day: string;
  time: string;
  today: string;
  onChange: (day: string, time: string) => void;
}

function DayAndTime({ labels, day, time, today, onChange }: DayAndTimeProps) {
  return (
    <>
      <TextInput
        type="date"
        min={today}
        label={labels[0]}
        value={day}
        onChange={(event) => {
          onChange(event.currentTarget.value, time);
        }}
      />
      <TextInput
        type="time"
        step={300}
        label={labels[1]}
        value={time}
        onChange={(event) => {
          onChange(day, event.currentTarget.value);
        }}
      />
    </>
  );
}
