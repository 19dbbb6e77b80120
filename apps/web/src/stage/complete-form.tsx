import { Button, Radio, Textarea } from '@mantine/core';
import type { CompleteStage } from '@archwright/contracts';
import { useState } from 'react';
import { Refusal } from '../look/notice.js';
import { stageWords as words } from '../words/chair.js';

interface Props {
  /** An undecided alert: the visit is most likely to be repeated. */
  hasAlert: boolean;
  pending: boolean;
  error: unknown;
  onComplete: (body: CompleteStage) => void;
}

/** Finishing the stage; an open gate refuses it and says what is missing. */
export function CompleteForm(props: Props) {
  const [chosen, setOutcome] = useState<CompleteStage['outcome'] | null>(null);
  const outcome = chosen ?? (props.hasAlert ? 'repeat' : 'passed');
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
