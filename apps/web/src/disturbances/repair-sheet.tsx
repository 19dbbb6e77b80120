import { Button } from '@mantine/core';
import type { DisturbanceView } from '@archwright/contracts';
import { RippleSheet } from '../ripple/ripple-sheet.js';
import { viewerZone } from '../time/zone.js';
import { disturbanceWords as words } from '../words/disturbances.js';
import { costSentences } from './disturbance-view.js';

interface Props {
  proposal: DisturbanceView['proposals'][number];
  zone: string;
  today: string;
  /** The first way stands open, the others open on demand: what is accepted has been seen. */
  isFirst: boolean;
  pending: boolean;
  /** Null when there is nothing to accept, or not for this person. */
  onAccept: (() => void) | null;
}

/** One way to repair it: how far it reaches, what moves in which case, whom to call, what stays. */
export function RepairSheet({ proposal, zone, today, isFirst, pending, onAccept }: Props) {
  return (
    <details className="sheet sheet-pad details" open={isFirst ? true : undefined}>
      <summary>
        <h3 className="proposal-name">{proposal.label}</h3>
      </summary>
      <div className="stack">
        <ul className="bullets">
          {costSentences(proposal).map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
        {proposal.ripples.length === 0 ? <p>{words.nothingMoves}</p> : null}
        {proposal.ripples.map((ripple) => (
          <section key={ripple.id} className="stack-tight">
            <h4>{ripple.visits[0]?.caseNumber ?? ''}</h4>
            <RippleSheet ripple={ripple} zone={zone} today={today} viewer={viewerZone()} />
          </section>
        ))}
        {onAccept ? (
          <div>
            <Button size="md" loading={pending} aria-label={words.acceptOf(proposal.label)} onClick={onAccept}>
              {words.accept}
            </Button>
          </div>
        ) : null}
      </div>
    </details>
  );
}
