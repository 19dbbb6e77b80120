import { Button } from '@mantine/core';
import type { ReportLateStep } from '@archwright/contracts';
import { useState, type SyntheticEvent } from 'react';
import { useNow } from '../look/clock.js';
import { useFirstProblem } from '../look/first-problem.js';
import { WhenAndWhy } from '../look/when-and-why.js';
import { frameWords } from '../words/frame.js';
import { lateWords as words } from '../words/lost.js';
import { lateBody, type LateStart } from './late-view.js';

interface Props {
  start: LateStart;
  today: string;
  pending: boolean;
  onSend: (body: ReportLateStep) => void;
  onCancel: () => void;
}

/** When the work will be ready, and why it is late. It moves nothing. */
export function LateForm({ start, today, pending, onSend, onCancel }: Props) {
  const [draft, setDraft] = useState(start.draft);
  const [attempt, setAttempt] = useState(0);
  const now = useNow(60_000);
  const body = lateBody(draft, start, now);
  const isWrong = attempt > 0 && body === null;
  const form = useFirstProblem(attempt, isWrong);

  function send(event: SyntheticEvent): void {
    event.preventDefault();
    setAttempt((before) => before + 1);
    if (body !== null) onSend(body);
  }

  return (
    <form ref={form} className="work-form stack-tight" onSubmit={send} noValidate>
      <p className="small soft">{start.planned}</p>
      <WhenAndWhy draft={draft} words={words} from={today} isWrong={isWrong} autoFocus onChange={setDraft} />
      <div className="row">
        <Button type="submit" loading={pending}>
          {words.go}
        </Button>
        <Button variant="default" onClick={onCancel}>
          {frameWords.cancel}
        </Button>
      </div>
    </form>
  );
}
