import type { CaseView } from '@archwright/contracts';
import { Link } from '@tanstack/react-router';
import { Tag } from '../look/marks.js';
import { caseWords as words } from '../words/case.js';

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
              <Tag tone={words.alertState[alert.state] === 'decide' ? 'stop' : 'plain'}>
                {words.alertState[alert.state] ?? alert.state}
              </Tag>
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

/** Reminders in the order in which they fall due. */
export function CaseReminders({ rows }: { rows: { id: string; text: string; state: string }[] }) {
  return (
    <section className="stack-tight" aria-labelledby="case-reminders">
      <h2 id="case-reminders">{words.reminders}</h2>
      <ul className="sheet lines">
        {rows.length === 0 ? <li className="line soft">{words.noReminders}</li> : null}
        {rows.map((reminder) => (
          <li key={reminder.id} className="line row">
            <span>{reminder.text}</span>
            <span className="push">
              <Tag>{reminder.state}</Tag>
            </span>
          </li>
        ))}
      </ul>
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
