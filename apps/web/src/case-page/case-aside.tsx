import type { CaseView } from '@archwright/contracts';
import { Link } from '@tanstack/react-router';
import { isUndecided } from '../alerts/undecided.js';
import { Tag } from '../look/marks.js';
import { caseWords as words } from '../words/case.js';
import type { ReminderRow } from './case-page-view.js';

/** Alerts of the case, those that wait for a decision marked. */
export function CaseAlerts({ alerts }: { alerts: CaseView['alerts'] }) {
  return (
    <section className="stack-tight" aria-labelledby="case-alerts">
      <h2 id="case-alerts">{words.alerts}</h2>
      <ul className="sheet lines">
        {alerts.length === 0 ? <li className="line soft">{words.noAlerts}</li> : null}
        {alerts.map((alert) => (
          <li key={alert.id} className="line stack-none">
            <div>
              <Tag tone={isUndecided(alert) ? 'stop' : 'plain'}>{words.alertState[alert.state] ?? alert.state}</Tag>
            </div>
            <p>{alert.reason}</p>
            <Link to="/chair/alerts/$alertId" params={{ alertId: alert.id }}>
              {words.seeAlert}
            </Link>
          </li>
        ))}
      </ul>
    </section>
  );
}

const REMINDERS_SHOWN = 3;

function Reminder({ row }: { row: ReminderRow }) {
  return (
    <li className="line stack-none">
      <span>{row.visit}</span>
      <span className="row small soft">
        {row.text}
        <span className="push">
          <Tag>{row.state}</Tag>
        </span>
      </span>
    </li>
  );
}

/** The next reminders; the rest on demand, since every visit has several. */
export function CaseReminders({ rows }: { rows: ReminderRow[] }) {
  const [next, more] = [rows.slice(0, REMINDERS_SHOWN), rows.slice(REMINDERS_SHOWN)];
  return (
    <section className="stack-tight" aria-labelledby="case-reminders">
      <h2 id="case-reminders">{words.reminders}</h2>
      <div className="sheet">
        {rows.length === 0 ? <p className="line soft">{words.noReminders}</p> : null}
        <ul className="lines">
          {next.map((row) => (
            <Reminder key={row.id} row={row} />
          ))}
        </ul>
        {more.length > 0 ? (
          <details className="details line reminders-more">
            <summary>{words.moreReminders(more.length)}</summary>
            <ul className="lines">
              {more.map((row) => (
                <Reminder key={row.id} row={row} />
              ))}
            </ul>
          </details>
        ) : null}
      </div>
    </section>
  );
}

/** Who did what, the latest first. */
export function CaseHistory({
  events,
}: {
  events: { key: string; when: string; sentence: string; by: string | null }[];
}) {
  return (
    <section className="stack-tight" aria-labelledby="case-history">
      <h2 id="case-history">{words.history}</h2>
      <ol className="sheet lines">
        {events.length === 0 ? <li className="line soft">{words.noHistory}</li> : null}
        {events.map((event) => (
          <li key={event.key} className="line">
            <span className="small soft">
              {event.when}
              {event.by ? ` · ${event.by}` : ''}
            </span>
            <p>{event.sentence}</p>
          </li>
        ))}
      </ol>
    </section>
  );
}
