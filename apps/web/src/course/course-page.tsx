import type { CaseCourse } from '@archwright/contracts';
import { Link, useParams } from '@tanstack/react-router';
import { CaseAlerts, CaseHistory } from '../case-page/case-aside.js';
import { historyRows } from '../case-page/case-page-view.js';
import { Tag } from '../look/marks.js';
import { NotYet } from '../look/not-yet.js';
import { PlainTable } from '../look/plain-table.js';
import { ScreenHead } from '../look/screen.js';
import { PhotographFigure } from '../photographs/photograph-figure.js';
import { tracingInWords } from '../stage/tracing-view.js';
import { AttemptsCompared } from '../tracing-pad/attempts-compared.js';
import { caseWords } from '../words/case.js';
import { stageWords } from '../words/chair.js';
import { courseWords as words } from '../words/course.js';
import { photographWords } from '../words/photographs.js';
import { toldWords } from '../words/told.js';
import { happenedRows, measuredTable, tracedVisits, type HappenedRow } from './course-view.js';
import { useCourse } from './use-course.js';

/** A case from its first visit on: first plan against what happened, measurements, tracings, alerts, who did what. */
export function CoursePage() {
  const { caseId } = useParams({ from: '/inside/chair/cases/$caseId/course' });
  const { practice, view, course } = useCourse(caseId);
  if (!view.data || !course.data) return <NotYet asked={view.data ? course : view} what={words.loading} />;
  const { today } = practice;
  return (
    <>
      <ScreenHead title={words.title(course.data.number, view.data.patient.name)} sentence={toldWords(view.data.told)}>
        <Link to="/desk/cases/$caseId" params={{ caseId }} className="action">
          {stageWords.theCase}
        </Link>
      </ScreenHead>
      <div className="stack">
        <Happened rows={happenedRows(course.data, today)} />
        <Measured course={course.data} today={today} />
        <Tracings course={course.data} />
        <Photographs course={course.data} today={today} />
        <div className="beside">
          <CaseHistory events={historyRows(view.data, today)} />
          <CaseAlerts alerts={view.data.alerts} />
        </div>
      </div>
    </>
  );
}

function Happened({ rows }: { rows: HappenedRow[] }) {
  return (
    <section className="stack-tight" aria-labelledby="course-plan">
      <h2 id="course-plan">{words.plan}</h2>
      <PlainTable
        label={words.plan}
        columns={[words.columns.what, words.columns.first, words.columns.then, words.columns.later]}
        rows={rows.map(({ key, what, detail, first, then, daysLater }) => ({
          id: key,
          head: (
            <>
              {what} <span className="small soft">{detail}</span>
            </>
          ),
          cells: [
            <span className="nowrap">{first}</span>,
            <span className="nowrap">{then}</span>,
            <Later days={daysLater} />,
          ],
        }))}
      />
    </section>
  );
}

function Later({ days }: { days: number | null }) {
  if (days === null) return null;
  if (days > 0) return <Tag tone="caution">{words.later(days)}</Tag>;
  return <span className="soft">{days === 0 ? words.onTheDay : words.earlier(-days)}</span>;
}

function Measured({ course, today }: { course: CaseCourse; today: string }) {
  const { columns, rows } = measuredTable(course, today);
  return (
    <section className="stack-tight" aria-labelledby="course-measured">
      <h2 id="course-measured">{words.measured}</h2>
      {rows.length === 0 ? (
        <p className="soft">{words.noneMeasured}</p>
      ) : (
        <>
          <p className="small soft">{words.measuredNote}</p>
          <PlainTable
            label={words.measured}
            columns={[words.measurement, ...columns]}
            rows={rows.map(({ id, name, how, cells }) => ({
              id,
              head: (
                <>
                  {name} <span className="small soft">{how}</span>
                </>
              ),
              cells,
            }))}
          />
        </>
      )}
    </section>
  );
}

function Tracings({ course }: { course: CaseCourse }) {
  const visits = tracedVisits(course);
  return (
    <section className="stack-tight" aria-labelledby="course-tracings">
      <h2 id="course-tracings">{words.tracings}</h2>
      {visits.length === 0 ? <p className="soft">{words.noTracings}</p> : null}
      {visits.map(({ stageId, title, round, tracings }) => (
        <article key={stageId} className="sheet sheet-pad stack-tight" aria-label={title}>
          <VisitTitle title={title} round={round} />
          <ul className="bullets">
            {tracings.map((tracing) => (
              <li key={tracing.number}>
                {tracingInWords(tracing)} {tracing.isDrawn ? null : <span className="small soft">{words.typed}</span>}
              </li>
            ))}
          </ul>
          <AttemptsCompared stageId={stageId} saved={tracings} drawn={[]} />
        </article>
      ))}
    </section>
  );
}

function Photographs({ course, today }: { course: CaseCourse; today: string }) {
  const visits = course.visits.filter(({ photographs }) => photographs.length > 0);
  return (
    <section className="stack-tight" aria-labelledby="course-photographs">
      <h2 id="course-photographs">{photographWords.title}</h2>
      {visits.length === 0 ? <p className="soft">{words.noPhotographs}</p> : null}
      {visits.map(({ stageId, title, round, photographs }) => (
        <article key={stageId} className="sheet sheet-pad stack-tight" aria-label={title}>
          <VisitTitle title={title} round={round} />
          <div className="photographs">
            {photographs.map((photograph) => (
              <PhotographFigure key={photograph.id} photograph={photograph} zone={course.zone} today={today} />
            ))}
          </div>
        </article>
      ))}
    </section>
  );
}

function VisitTitle({ title, round }: { title: string; round: number }) {
  return (
    <h3>
      {title} {round > 1 ? <span className="small soft">{caseWords.round(round)}</span> : null}
    </h3>
  );
}
