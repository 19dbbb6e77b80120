import { Button } from '@mantine/core';
import type { VisitProposal } from '@archwright/contracts';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { DeskPlaces } from '../desk-day/desk-places.js';
import { may } from '../frame/places-view.js';
import { useSession } from '../frame/use-session.js';
import { Notice, Refusal } from '../look/notice.js';
import { isOutrun } from '../look/outrun.js';
import { Empty, FirstWait, ScreenHead } from '../look/screen.js';
import { RippleSheet } from '../ripple/ripple-sheet.js';
import { dateAndTime } from '../time/wording.js';
import { viewerZone } from '../time/zone.js';
import { visitProposalWords as words } from '../words/workload.js';
import { EffectTable } from './proposal-sheet.js';
import { useVisitProposals } from './use-visit-proposals.js';
import { effectsOf } from './workload-view.js';
import './workload.css';

interface Props {
  proposal: VisitProposal;
  today: string;
  pending: boolean;
  /** Null for who may only look on. */
  onAccept: (() => void) | null;
}

/** One proposal with everything that would move and everybody who is to be told, before anybody accepts it. */
function ProposalToDecide({ proposal, today, pending, onAccept }: Props) {
  const viewer = viewerZone();
  const { id, laboratory, askedAt, sentence, certainty, ripples } = proposal;
  return (
    <article className="sheet sheet-pad stack" aria-labelledby={`moves-${id}`}>
      <h2 id={`moves-${id}`}>{words.from(laboratory, dateAndTime(askedAt, viewer, today))}</h2>
      <p>{sentence}</p>
      <p className="small soft">{certainty}</p>
      <EffectTable effects={effectsOf(proposal)} />
      {ripples.map((ripple) => (
        <section key={ripple.id} className="stack-tight">
          <h3>
            <Link to="/desk/cases/$caseId" params={{ caseId: ripple.caseId }}>
              {ripple.caseNumber}
            </Link>
          </h3>
          <RippleSheet ripple={ripple} zone={viewer} today={today} viewer={viewer} />
        </section>
      ))}
      {onAccept ? (
        <div className="no-print">
          <Button size="md" loading={pending} aria-label={words.acceptOf(laboratory)} onClick={onAccept}>
            {words.accept}
          </Button>
        </div>
      ) : (
        <p className="soft">{words.notYours}</p>
      )}
    </article>
  );
}

/** Visits that laboratories propose to choose again: accepted as a whole by whoever calls the patients. */
export function VisitProposalsPage() {
  const { role } = useSession();
  const { practice, list, accept } = useVisitProposals();
  const [said, setSaid] = useState('');
  const items = list.data?.items;
  const isStale = isOutrun(accept.error);
  return (
    <>
      <ScreenHead title={words.title} sentence={words.sentence} />
      <div className="stack">
        <DeskPlaces />
        <div className="stack column">
          <Refusal error={list.error} onRetry={() => void list.refetch()} />
          <Refusal error={isStale ? null : accept.error} />
          {isStale ? <Notice tone="caution">{words.stale}</Notice> : null}
          <p role="status" className={said ? 'notice notice-go' : 'unseen'}>
            {said}
          </p>
          {items === undefined && !list.error ? <FirstWait what={words.loading} /> : null}
          {items?.length === 0 ? <Empty>{words.none}</Empty> : null}
          {items?.map((proposal) => (
            <ProposalToDecide
              key={proposal.id}
              proposal={proposal}
              today={practice.today}
              pending={accept.isPending}
              onAccept={
                may.keepDesk(role)
                  ? () => {
                      setSaid('');
                      accept.mutate(proposal, {
                        onSuccess: () => {
                          setSaid(words.accepted);
                        },
                      });
                    }
                  : null
              }
            />
          ))}
        </div>
      </div>
    </>
  );
}
