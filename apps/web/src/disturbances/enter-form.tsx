import { Button, NativeSelect, Textarea, TextInput } from '@mantine/core';
import type { DisturbanceSubjects, EnterDisturbance } from '@archwright/contracts';
import { useState, type SyntheticEvent } from 'react';
import { DateField } from '../look/date-field.js';
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
  const { body, wrong } = toEntry(draft, subjects);
  const errors: typeof wrong = attempt > 0 ? wrong : {};
  const form = useFirstProblem(attempt, body === null);
  const set = (change: Partial<EntryDraft>): void => {
    setDraft((before) => ({ ...before, ...change }));
  };

  function send(event: SyntheticEvent): void {
    event.preventDefault();
    setAttempt((before) => before + 1);
    if (body !== null) onEnter(body);
  }

  return (
    <form ref={form} className="sheet sheet-pad stack" onSubmit={send} noValidate>
      <h2>{words.title}</h2>
      <NativeSelect
        label={words.what}
        required
        value={draft.subject}
        error={errors.subject}
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
          error={errors.from}
          onChange={(fromDay, fromTime) => {
            set({ fromDay, fromTime });
          }}
        />
        <DayAndTime
          labels={[words.untilDay, words.untilTime]}
          day={draft.untilDay}
          time={draft.untilTime}
          today={today}
          error={errors.until}
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
        error={errors.reason}
        onChange={(event) => {
          set({ reason: event.currentTarget.value });
        }}
      />
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
  error: string | undefined;
  onChange: (day: string, time: string) => void;
}

function DayAndTime({ labels, day, time, today, error, onChange }: DayAndTimeProps) {
  return (
    <>
      <DateField
        min={today}
        label={labels[0]}
        value={day}
        error={error}
        onChange={(next) => {
          onChange(next, time);
        }}
      />
      <TextInput
        type="time"
        step={300}
        label={labels[1]}
        value={time}
        error={error !== undefined}
        onChange={(event) => {
          onChange(day, event.currentTarget.value);
        }}
      />
    </>
  );
}
