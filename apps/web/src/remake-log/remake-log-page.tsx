import { Button } from '@mantine/core';
import { useSuspenseQuery } from '@tanstack/react-query';
import { Link, useNavigate, useSearch } from '@tanstack/react-router';
import type { RemakeLog } from '@archwright/contracts';
import { practiceQuery } from '../api/queries.js';
import { may } from '../frame/places-view.js';
import { useSession } from '../frame/use-session.js';
import { CaseLink } from '../lab-case/case-link.js';
import { Notice, Refusal } from '../look/notice.js';
import { Empty, FirstWait, ScreenHead, Waiting } from '../look/screen.js';
import { practiceZone } from '../time/practice-zone.js';
import { ticketWords } from '../words/tickets.js';
import { remakeLogWords as words } from '../words/remake-log.js';
import { CountSection } from './count-section.js';
import { PeriodForm } from './period-form.js';
import './remake-log.css';
import { countRows, entryRow, listTitle, logSentence, periodOf, type EntryRow } from './remake-log-view.js';
import { useRemakeLog } from './use-remake-log.js';

/** What was made again in a period, by cause and by origin, and every remake behind each count. */
export function RemakeLogPage() {
  const search = useSearch({ from: '/inside/bench/remakes' });
  const navigate = useNavigate();
  const practice = useSuspenseQuery(practiceQuery).data;
  const { today } = practice;
  const asked = periodOf(search, today);
  const log = useRemakeLog(asked, search);
  const [first] = log.data?.pages ?? [];
  // Days that are no period are shown as they stand, to be mended.
  const period = asked ?? { from: search.from ?? '', until: search.until ?? today };
  return (
    <>
      <ScreenHead title={words.title} sentence={first && asked ? logSentence(first, asked, today) : undefined}>
        <Link to="/bench">{ticketWords.backToBench}</Link>
      </ScreenHead>
      <div className="stack">
        <PeriodForm
          key={`${period.from} ${period.until}`}
          period={period}
          onShow={(shown) => void navigate({ to: '/bench/remakes', search: { ...shown } })}
        />
        {asked === null ? <Notice tone="caution">{words.periodWrong}</Notice> : null}
        <Refusal error={log.error} onRetry={() => void log.refetch()} />
        {log.isLoading ? <FirstWait what={words.loading} /> : null}
        {first && asked ? (
          <Waiting busy={log.isPlaceholderData}>
            {first.remakes === 0 ? (
              <div className="sheet">
                <Empty>{words.none}</Empty>
              </div>
            ) : (
              <div className="stack">
                <p className="small soft">{words.note}</p>
                <Counts log={first} search={search} />
                <section className="stack-tight" aria-labelledby="remakes">
                  <div className="row">
                    <h2 id="remakes">{listTitle(first, search)}</h2>
                    {(search.cause ?? search.origin) === undefined ? null : (
                      <Link to="/bench/remakes" search={{ from: search.from, until: search.until }} hash="remakes">
                        {words.showAll}
                      </Link>
                    )}
                  </div>
                  <ul className="sheet lines">
                    {log.data?.pages
                      .flatMap(({ items }) => items)
                      .map((entry) => (
                        <Entry key={entry.alertId} row={entryRow(entry, practiceZone(practice), today)} />
                      ))}
                  </ul>
                  {log.hasNextPage ? (
                    <div>
                      <Button
                        variant="default"
                        loading={log.isFetchingNextPage}
                        onClick={() => void log.fetchNextPage()}
                      >
                        {words.more}
                      </Button>
                    </div>
                  ) : null}
                </section>
              </div>
            )}
          </Waiting>
        ) : null}
      </div>
    </>
  );
}

type Search = Partial<Record<'from' | 'until' | 'cause' | 'origin', string | undefined>>;

function Counts({ log, search }: { log: RemakeLog; search: Search }) {
  return (
    <div className="halves">
      <CountSection
        id="by-cause"
        title={words.byCause}
        head={words.columns.name}
        rows={countRows(log.causes)}
        searchOf={(cause) => ({ ...search, cause })}
      />
      <CountSection
        id="by-origin"
        title={words.byOrigin}
        note={words.originNote}
        head={words.columns.origin}
        rows={countRows(log.origins)}
        searchOf={(origin) => ({ ...search, origin })}
      />
    </div>
  );
}

function Entry({ row }: { row: EntryRow }) {
  const { role } = useSession();
  return (
    <li className="line stack-none">
      <p>
        <CaseLink caseId={row.caseId} number={row.caseNumber} /> {row.cause}
      </p>
      {row.reason ? <p>{row.reason}</p> : null}
      <p className="small soft">{row.facts.join(' · ')}</p>
      {may.seeVisits(role) ? (
        <p className="small">
          <Link to="/chair/alerts/$alertId" params={{ alertId: row.id }} aria-label={words.alertOf(row.caseNumber)}>
            {words.alert}
          </Link>
        </p>
      ) : null}
    </li>
  );
}
