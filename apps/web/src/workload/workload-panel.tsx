import { Button } from '@mantine/core';
import { useState } from 'react';
import { hasStatus } from '../api/errors.js';
import { CaseLink } from '../lab-case/case-link.js';
import { Mark } from '../look/marks.js';
import { Notice, Refusal } from '../look/notice.js';
import { FirstWait } from '../look/screen.js';
import { workloadWords as words } from '../words/workload.js';
import { ProposalSheet } from './proposal-sheet.js';
import { useWorkload } from './use-workload.js';
import { isUnderWay, proposalCards } from './workload-view.js';
import './workload.css';

interface Props {
  laboratory: { id: string; zone: string };
  today: string;
  /** Whether this person moves work, or only looks on. */
  mayAct: boolean;
}

/** Better plans for a laboratory's work: asked for, watched, and accepted by a person or not at all. */
export function WorkloadPanel({ laboratory, today, mayAct }: Props) {
  const { latest, look, cancel, accept } = useWorkload(laboratory.id);
  const [said, setSaid] = useState('');
  const run = latest.data?.run ?? null;
  const underWay = isUnderWay(run);
  const isStale = hasStatus(accept.error, 409) || hasStatus(accept.error, 412);
  return (
    <section className="stack-tight" aria-labelledby="workload">
      <div className="row">
        <h2 id="workload">{words.title}</h2>
        {mayAct && latest.data ? (
          <div className="row push no-print">
            {underWay && run ? (
              <Button
                variant="default"
                loading={cancel.isPending}
                onClick={() => {
                  cancel.mutate(run, {
                    onSuccess: () => {
                      setSaid(words.cancelled);
                    },
                  });
                }}
              >
                {words.cancel}
              </Button>
            ) : (
              <Button
                variant="default"
                loading={look.isPending}
                onClick={() => {
                  setSaid('');
                  accept.reset();
                  look.mutate();
                }}
              >
                {run === null ? words.look : words.lookAgain}
              </Button>
            )}
          </div>
        ) : null}
      </div>
      <Refusal error={latest.error} onRetry={() => void latest.refetch()} />
      <Refusal error={look.error ?? cancel.error ?? (isStale ? null : accept.error)} />
      {isStale ? <Notice tone="caution">{words.stale}</Notice> : null}
      {latest.isPending ? <FirstWait what={words.loading} /> : null}
      <p role="status" className={said ? 'notice notice-go' : 'unseen'}>
        {said}
      </p>
      {latest.data ? (
        <p className="soft" aria-live="polite">
          {run?.sentence ?? words.none}
        </p>
      ) : null}
      {run && run.late.length > 0 ? (
        <>
          <h3>{words.lateTitle}</h3>
          <ul className="sheet lines">
            {run.late.map((late) => (
              <li key={late.caseId + late.sentence} className="line risk">
                <Mark shape="needs-person" />
                <div className="stack-none">
                  <p>
                    <CaseLink caseId={late.caseId} number={late.caseNumber} /> {late.sentence}
                  </p>
                  <p className="small soft">{late.cause}</p>
                </div>
              </li>
            ))}
          </ul>
        </>
      ) : null}
      {run
        ? proposalCards(run, laboratory.zone, today).map((card) => (
            <ProposalSheet
              key={card.id}
              card={card}
              mayAccept={mayAct}
              pending={accept.isPending}
              onAccept={() => {
                accept.mutate(card, {
                  onSuccess: () => {
                    setSaid(words.accepted);
                  },
                });
              }}
            />
          ))
        : null}
    </section>
  );
}
