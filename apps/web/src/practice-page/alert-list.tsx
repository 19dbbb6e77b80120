import { Link } from '@tanstack/react-router';
import type { OpenAlert } from '../alerts/open-alerts.js';
import { Mark, Tag } from '../look/marks.js';
import { practiceWords as words } from '../words/practice.js';

/** Alerts that wait for a decision; nothing when there are none. */
export function AlertList({ rows }: { rows: OpenAlert[] }) {
  if (rows.length === 0) return null;
  return (
    <section className="stack-tight" aria-labelledby="open-alerts">
      <h2 id="open-alerts">{words.alertsTitle}</h2>
      <ul className="sheet lines">
        {rows.map((row) => (
          <li key={row.id} className="line stack-none">
            <div className="row">
              <Mark shape="needs-person" />
              <Link to="/chair/alerts/$alertId" params={{ alertId: row.id }} className="strong">
                {row.caseNumber} · {row.patientName}
              </Link>
              <Tag tone="stop">{row.deadline}</Tag>
            </div>
            <p>{row.reason}</p>
          </li>
        ))}
      </ul>
    </section>
  );
}
