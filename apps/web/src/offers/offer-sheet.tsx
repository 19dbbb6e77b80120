import type { Offer } from '@archwright/contracts';
import type { ReactNode } from 'react';
import type { Axis } from '../case-line/axis-view.js';
import { CaseLineDrawing } from '../case-line/line-drawing.js';
import type { LineDrawing } from '../case-line/line-view.js';
import { PlanList } from '../case-line/plan-list.js';
import type { PlanRow } from '../case-line/plan-list-view.js';
import { offerWords as words } from '../words/case.js';
import { lineWords } from '../words/line.js';
import { toldWords } from '../words/told.js';
import type { VisitLine } from './offers-view.js';

interface Props {
  offer: Offer;
  number: number;
  axis: Axis;
  row: LineDrawing;
  visits: VisitLine[];
  rows: PlanRow[];
  delivery: string;
  children: ReactNode;
}

/** One complete offer: its line on the common axis, its delivery day, and what it gives up. */
export function OfferSheet({ offer, number, axis, row, visits, rows, delivery, children }: Props) {
  return (
    <article className="sheet offer" aria-labelledby={`offer-${offer.id}`}>
      <div className="offer-line">
        <div
          className="scroll-x"
          tabIndex={0}
          role="group"
          aria-label={words.drawing(words.offerNumber(number), lineWords.captionVisit)}
        >
          <CaseLineDrawing axis={axis} row={row} levels={lineWords.levels} />
        </div>
        <ol className="offer-visits">
          {visits.map((visit) => (
            <li key={visit.key}>
              <span className="strong nowrap">{visit.when}</span> {visit.title}
              <span className="soft">{words.thenWhere(visit.where)}</span>
              {visit.againstWish ? <span className="offer-wish">{words.wish}</span> : null}
            </li>
          ))}
        </ol>
        <div className="offer-list">
          <PlanList rows={rows} wishWord={words.wish} />
        </div>
      </div>
      <div className="offer-side stack-tight">
        <div>
          <p className="soft">{toldWords(offer.told)}</p>
          <h2 className="offer-date" id={`offer-${offer.id}`}>
            <span className="unseen">{words.placement(words.offerNumber(number))} </span>
            {delivery}
          </h2>
          <p className="small soft">{words.visits(offer.plan.visits.length)}</p>
        </div>
        {offer.plan.reasons.length > 0 ? (
          <ul className="bullets soft" aria-label={words.reasons}>
            {offer.plan.reasons.map(({ told }) => (
              <li key={told.code}>{toldWords(told)}</li>
            ))}
          </ul>
        ) : null}
        {offer.plan.givesUp.length > 0 ? (
          <div>
            <h3>{words.givesUp}</h3>
            <ul className="bullets soft">
              {offer.plan.givesUp.map(({ sentence, told }) => (
                <li key={sentence}>{toldWords(told)}</li>
              ))}
            </ul>
          </div>
        ) : null}
        <div className="no-print">{children}</div>
      </div>
    </article>
  );
}
