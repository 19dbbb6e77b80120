import { Button, Textarea } from '@mantine/core';
import type { LabStepAction } from '@archwright/contracts';
import { useState } from 'react';
import { Mark, Tag } from '../look/marks.js';
import { benchWords as words } from '../words/bench.js';
import { frameWords } from '../words/frame.js';
import type { StepRow } from './bench-view.js';

interface Props {
  row: StepRow;
  mayAct: boolean;
  pending: boolean;
  onAct: (action: LabStepAction) => void;
}

/** One step at a bench: when, whose, how long, due when, and what may be done. */
export function WorkStep({ row, mayAct, pending, onAct }: Props) {
  const [writing, setWriting] = useState<'ask' | 'reject' | null>(null);
  const [text, setText] = useState('');
  const [tried, setTried] = useState(false);

  function send(): void {
    setTried(true);
    const said = text.trim();
    if (said === '' || writing === null) return;
    onAct(writing === 'ask' ? { action: 'ask', question: said } : { action: 'reject', reason: said });
    setWriting(null);
    setText('');
    setTried(false);
  }

  return (
    <li className="line work-step">
      <div className="work-time">{row.time}</div>
      <div className="stack-none">
        <div>
          <span className="strong">{row.caseNumber}</span> {row.title}, {row.arches}
        </div>
        <div className="small soft">{[row.centre, row.place, row.minutes].join(' · ')}</div>
        <div className="row small">
          <span className="case-state">
            <Mark shape={row.mark} /> {words.state[row.state]}
          </span>
          {row.due ? <span className="soft">{row.due}</span> : null}
          {row.slack ? (
            row.isLate ? (
              <Tag tone="stop">{row.slack}</Tag>
            ) : (
              <span className="soft">{row.slack}</span>
            )
          ) : null}
        </div>
        {row.waitsFor ? (
          <div className="small">
            <Tag tone="caution">{words.waits}</Tag> {row.waitsFor}
          </div>
        ) : null}
        {row.openQuestion ? (
          <div className="small">
            <Tag tone="accent">{words.question}</Tag> {row.openQuestion}
          </div>
        ) : null}
      </div>
      <div className="row work-acts">
        {mayAct
          ? row.actions.map((action, index) => {
              const label = action === 'start' && row.state === 'paused' ? words.action.resume : words.action[action];
              return (
                <Button
                  key={action}
                  size="compact-md"
                  variant={index === 0 && action !== 'ask' ? 'filled' : 'default'}
                  disabled={pending}
                  aria-expanded={action === 'ask' || action === 'reject' ? writing === action : undefined}
                  aria-label={words.actionOn(label, row.caseNumber, row.title)}
                  onClick={() => {
                    if (action === 'ask' || action === 'reject') setWriting(writing === action ? null : action);
                    else onAct({ action });
                  }}
                >
                  {label}
                </Button>
              );
            })
          : null}
      </div>
      {writing ? (
        <div className="work-form stack-tight">
          <Textarea
            label={writing === 'ask' ? words.askLabel : words.rejectLabel}
            value={text}
            maxLength={500}
            error={tried && text.trim() === '' ? words.textMissing : null}
            onChange={(event) => {
              setText(event.currentTarget.value);
            }}
          />
          <div className="row">
            <Button onClick={send}>{writing === 'ask' ? words.send : words.rejectGo}</Button>
            <Button
              variant="default"
              onClick={() => {
                setWriting(null);
              }}
            >
              {frameWords.cancel}
            </Button>
          </div>
        </div>
      ) : null}
    </li>
  );
}
