import { Button } from '@mantine/core';
import type { LabStepAction } from '@archwright/contracts';
import { Link } from '@tanstack/react-router';
import { Fragment, useState } from 'react';
import { hasStatus } from '../api/errors.js';
import { CaseLink } from '../lab-case/case-link.js';
import { QuestionNote } from '../lab-questions/question-note.js';
import { Mark, Tag } from '../look/marks.js';
import { Notice, Refusal } from '../look/notice.js';
import { benchWords as words } from '../words/bench.js';
import { ticketWords } from '../words/tickets.js';
import type { StepRow } from './bench-view.js';
import { StepWordsForm } from './step-words-form.js';
import { useStepAction } from './use-step-action.js';

interface Props {
  row: StepRow;
  mayAct: boolean;
  /** Told once the server has done it. */
  onDone: (said: string) => void;
}

/** One step at a bench: how much time is left, whose it is, and what may be done. */
export function WorkStep({ row, mayAct, onDone }: Props) {
  const [writing, setWriting] = useState<'ask' | 'reject' | null>(null);
  const act = useStepAction(row, (action) => {
    setWriting(null);
    onDone(words.done[action](words.stepOf(row.caseNumber, row.title)));
  });

  return (
    <li className="line work-step">
      <StepLead lead={row.lead} />
      <div className="stack-none">
        <div>
          <CaseLink caseId={row.caseId} number={row.caseNumber} /> {row.title}{' '}
          <Link
            className="no-print small"
            to="/bench/tickets"
            search={{ job: row.id }}
            aria-label={ticketWords.linkOf(words.stepOf(row.caseNumber, row.title))}
          >
            {ticketWords.linkShort}
          </Link>
        </div>
        <p className="small soft">
          {row.facts.map((fact, index) => (
            <Fragment key={fact}>
              {index > 0 ? ' · ' : null}
              <span className="nowrap">{fact}</span>
            </Fragment>
          ))}
        </p>
        <p className="small">
          <span className="case-state" data-shape={row.mark}>
            <Mark shape={row.mark} /> {words.state[row.state]}
          </span>
          {row.waitsFor ? (
            <>
              {' '}
              <Tag tone="caution">{words.waits}</Tag> {row.waitsFor}
            </>
          ) : null}
        </p>
        {row.avoid ? (
          <p className="small">
            <Tag tone="stop">{words.allergy}</Tag> {row.avoid}
          </p>
        ) : null}
        {row.question ? <QuestionNote lines={row.question} /> : null}
      </div>
      {mayAct ? (
        <StepButtons row={row} writing={writing} pending={act.isPending} onWrite={setWriting} onAct={act.mutate} />
      ) : null}
      {writing ? (
        <StepWordsForm
          key={writing}
          purpose={writing}
          pending={act.isPending}
          error={act.error}
          onSend={(text) => {
            act.mutate(writing === 'ask' ? { action: 'ask', question: text } : { action: 'reject', reason: text });
          }}
          onCancel={() => {
            setWriting(null);
          }}
        />
      ) : null}
      {act.error ? (
        <div className="work-form">
          {hasStatus(act.error, 412) ? <Notice tone="caution">{words.stale}</Notice> : <Refusal error={act.error} />}
        </div>
      ) : null}
    </li>
  );
}

/** The figure that orders the list. */
function StepLead({ lead }: { lead: StepRow['lead'] }) {
  if (lead.isLate) {
    return (
      <div>
        <Tag tone="stop">{lead.word}</Tag>
      </div>
    );
  }
  return (
    <div>
      {lead.figure ? <div className="strong">{lead.figure}</div> : null}
      <div className="small soft">{lead.word}</div>
    </div>
  );
}

interface ButtonProps {
  row: StepRow;
  writing: 'ask' | 'reject' | null;
  pending: boolean;
  onWrite: (writing: 'ask' | 'reject' | null) => void;
  onAct: (action: LabStepAction) => void;
}

function StepButtons({ row, writing, pending, onWrite, onAct }: ButtonProps) {
  return (
    <div className="row work-acts no-print">
      {row.actions.map((action, index) => {
        const label = action === 'start' && row.state === 'paused' ? words.action.resume : words.action[action];
        const isWritten = action === 'ask' || action === 'reject';
        return (
          <Button
            key={action}
            size="compact-md"
            variant={index === 0 && !isWritten ? 'filled' : 'default'}
            disabled={pending}
            aria-expanded={isWritten ? writing === action : undefined}
            aria-label={words.actionOn(label, row.caseNumber, row.title)}
            onClick={() => {
              if (isWritten) onWrite(writing === action ? null : action);
              else onAct({ action });
            }}
          >
            {label}
          </Button>
        );
      })}
    </div>
  );
}
