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
import { lateWords } from '../words/lost.js';
import { ticketWords } from '../words/tickets.js';
import type { StepRow } from './bench-view.js';
import { LateForm } from './late-form.js';
import { StepWordsForm } from './step-words-form.js';
import { useReportLate } from './use-report-late.js';
import { useStepAction } from './use-step-action.js';

interface Props {
  row: StepRow;
  mayAct: boolean;
  today: string;
  /** Told once the server has done it. */
  onDone: (said: string) => void;
}

/** What asks for words before it is done. */
type Written = 'ask' | 'reject' | 'late';

/** One step at a bench: how much time is left, whose it is, and what may be done. */
export function WorkStep({ row, mayAct, today, onDone }: Props) {
  const [writing, setWriting] = useState<Written | null>(null);
  const act = useStepAction(row, (action) => {
    setWriting(null);
    onDone(words.done[action](words.stepOf(row.caseNumber, row.title)));
  });
  const report = useReportLate(row.id, ({ visits }) => {
    setWriting(null);
    onDone(lateWords.done(visits, words.stepOf(row.caseNumber, row.title)));
  });
  const error = act.error ?? report.error;
  const pending = act.isPending || report.isPending;

  return (
    <li className="line work-step">
      <StepLead lead={row.lead} />
      <div className="stack-none">
        <div>
          <CaseLink caseId={row.caseId} number={row.caseNumber} /> {row.title}{' '}
          {row.actions.length > 0 ? (
            <Link
              className="no-print small"
              to="/bench/tickets"
              search={{ job: row.id }}
              aria-label={ticketWords.linkOf(words.stepOf(row.caseNumber, row.title))}
            >
              {ticketWords.linkShort}
            </Link>
          ) : null}
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
        {row.late ? (
          <p className="small">
            <Tag tone="caution">{lateWords.action}</Tag> {row.late}
          </p>
        ) : null}
        {row.question ? <QuestionNote lines={row.question} /> : null}
      </div>
      {mayAct ? (
        <StepButtons row={row} writing={writing} pending={pending} onWrite={setWriting} onAct={act.mutate} />
      ) : null}
      {writing === 'late' ? (
        <LateForm
          start={row.lateStart}
          today={today}
          pending={report.isPending}
          onSend={report.mutate}
          onCancel={() => {
            setWriting(null);
          }}
        />
      ) : null}
      {writing === 'ask' || writing === 'reject' ? (
        <StepWordsForm
          key={writing}
          stepId={row.id}
          purpose={writing}
          act={act}
          onCancel={() => {
            setWriting(null);
          }}
        />
      ) : null}
      {error ? (
        <div className="work-form">
          {hasStatus(error, 412) ? <Notice tone="caution">{words.stale}</Notice> : <Refusal error={error} />}
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

function labelOf(action: StepRow['actions'][number], state: StepRow['state']): string {
  if (action === 'late') return lateWords.action;
  return action === 'start' && state === 'paused' ? words.action.resume : words.action[action];
}

interface ButtonProps {
  row: StepRow;
  writing: Written | null;
  pending: boolean;
  onWrite: (writing: Written | null) => void;
  onAct: (action: LabStepAction) => void;
}

function StepButtons({ row, writing, pending, onWrite, onAct }: ButtonProps) {
  return (
    <div className="row work-acts no-print">
      {row.actions.map((action, index) => {
        const isWritten = action === 'ask' || action === 'reject' || action === 'late';
        return (
          <Button
            key={action}
            size="compact-md"
            variant={index === 0 && !isWritten ? 'filled' : 'default'}
            disabled={pending}
            aria-expanded={isWritten ? writing === action : undefined}
            aria-label={words.actionOn(labelOf(action, row.state), row.caseNumber, row.title)}
            onClick={() => {
              if (isWritten) onWrite(writing === action ? null : action);
              else onAct({ action });
            }}
          >
            {labelOf(action, row.state)}
          </Button>
        );
      })}
    </div>
  );
}
