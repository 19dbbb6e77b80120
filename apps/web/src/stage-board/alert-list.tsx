import { Link } from '@tanstack/react-router';
import { Mark, Tag } from '../look/marks.js';
import { boardWords as words } from '../words/chair.js';
import type { AlertRow } from './stage-board-view.js';

/** What waits for a decision stands above everything else. */
export function AlertList({ rows }: { rows: AlertRow[] }) {
  if (rows.length === 0) return null;
  return (
    <section className="stack-tight" aria-labelledby="alerts-first">
      <h2 id="alerts-first">{words.alerts}</h2>
      <ul className="sheet lines">
        {rows.map((row) => (
          <li key={row.id} className="line board-alert">
            <Mark shape="needs-person" />
            <div>
              <Link to="/chair/alerts/$alertId" params={{ alertId: row.id }} className="board-open">
                {row.caseNumber} · {row.patientName}
              </Link>
              <p>{row.reason}</p>
            </div>
            <Tag tone="stop">{row.deadline}</Tag>
          </li>
        ))}
      </ul>
    </section>
  );
}
