import { Link, useParams } from '@tanstack/react-router';
import { LineFigure } from '../case-line/line-figure.js';
import { lineOfCase } from '../case-line/plan-view.js';
import { CaseLots } from '../lots/case-lots.js';
import { Tag } from '../look/marks.js';
import { NotYet } from '../look/not-yet.js';
import { Refusal } from '../look/notice.js';
import { ScreenHead, Waiting } from '../look/screen.js';
import { labCaseWords as words } from '../words/bench.js';
import { caseWords } from '../words/case.js';
import { lotWords } from '../words/lots.js';
import { ticketWords } from '../words/tickets.js';
import './lab-case.css';
import { deliveryWords, orderSheets, pathWords, progressSentence, workRows } from './lab-case-view.js';
import { OrderList } from './order-list.js';
import { useLabCase } from './use-lab-case.js';
import { WorkTable } from './work-table.js';

/** One case as its laboratory sees it: the line, the work with its due times, the signed orders. Nobody's identity. */
export function LabCasePage() {
  const { caseId } = useParams({ from: '/inside/bench/cases/$caseId' });
  const { practice, view, lots } = useLabCase(caseId);
  if (!view.data) {
    return <NotYet asked={view} what={words.loading} />;
  }
  const known = view.data;
  return (
    <>
      <ScreenHead title={words.title(known.number, known.title)} sentence={progressSentence(known)}>
        <Link to="/bench">{words.back}</Link>
        <Link to="/bench/tickets" search={{ case: caseId }}>
          {ticketWords.link}
        </Link>
      </ScreenHead>
      <Waiting busy={view.isPlaceholderData}>
        <div className="stack">
          <div className="row">
            <Tag tone={known.state === 'open' ? 'accent' : 'caution'}>{caseWords.states[known.state]}</Tag>
            <span className="soft">{pathWords(known)}</span>
            <span className="strong push">{deliveryWords(known, practice.today)}</span>
          </div>
          <Refusal error={view.error} onRetry={() => void view.refetch()} />
          <Refusal error={lots.error} onRetry={() => void lots.refetch()} />
          <LineFigure line={lineOfCase({ ...known, alerts: [] })} label={words.line} nothing={words.nothingPlanned} />
          <div className="beside">
            <section className="stack-tight" aria-labelledby="lab-work">
              <h2 id="lab-work">{words.work}</h2>
              <WorkTable rows={workRows(known, practice.today)} />
            </section>
            <OrderList orders={orderSheets(known, practice.today)} />
          </div>
          {lots.data && lots.data.items.length > 0 ? (
            <section className="stack-tight" aria-labelledby="case-lots">
              <h2 id="case-lots">{lotWords.used.title}</h2>
              <CaseLots lots={lots.data.items} zone={known.zone} today={practice.today} />
            </section>
          ) : null}
        </div>
      </Waiting>
    </>
  );
}
