import type { PhotographView } from '@archwright/contracts';
import type { ReactNode } from 'react';
import { dateAndTime } from '../time/wording.js';
import { photographWords as words } from '../words/photographs.js';
import './photographs.css';

interface Props {
  photograph: PhotographView;
  zone: string;
  today: string;
  /** What may be done with it. */
  children?: ReactNode;
}

/** One photograph with who kept it; it opens in its full size. Of one that was taken away only that is left. */
export function PhotographFigure({ photograph, zone, today, children }: Props) {
  const { id, stageId, caption, widthPx, heightPx, recordedAt, recordedBy, removed } = photograph;
  const kept = words.kept(dateAndTime(recordedAt, zone, today), recordedBy);
  if (removed !== null) {
    return (
      <p className="small soft">
        {words.removed(caption, dateAndTime(removed.at, zone, today), removed.by, removed.reason)}
      </p>
    );
  }
  const address = `/api/v1/stages/${stageId}/photographs/${id}/picture`;
  return (
    <figure className="photograph stack-tight">
      <a href={address} target="_blank" rel="noreferrer">
        <img src={address} alt={words.pictureOf(caption)} width={widthPx} height={heightPx} />
      </a>
      <figcaption>
        {caption} <span className="small soft">{kept}</span>
      </figcaption>
      {children}
    </figure>
  );
}
