import { Link } from '@tanstack/react-router';
import { Mark, Tag } from '../look/marks.js';
import { boardWords as words } from '../words/chair.js';
import type { WaitingRow } from './stage-board-view.js';

function Opens({ row }: { row: WaitingRow }) {
  const label = `${row.caseNumber} · ${row.patientName}`;
  return row.kind === 'alert' ? (
    <Link to="/chair/alerts/$alertId" params={{ alertId: row.id }} className="board-open">
      {label}
    </Link>
  ) : (
    <Link to="/chair/stages/$stageId" params={{ stageId: row.id }} className="board-open">
      {label}
    </Link>
  );
}

/** What waits for a decision stands above everything else. */
export function WaitingList({ rows }: { rows: WaitingRow[] }) {
  if (rows.length === 0) return null;
  return (
    <section className="stack-tight" aria-labelledby="alerts-first">
      <h2 id="alerts-first">{words.alerts}</h2>
      <ul className="sheet lines">
        {rows.map((row) => (
          <li key={`${row.kind} ${row.id}`} className="line board-alert">
            <Mark shape="needs-person" />
            <div>
              <Opens row={row} />
              <p>
                {row.what} {row.reason}
              </p>
            </div>
            <Tag tone="stop">{row.deadline}</Tag>
          </li>
        ))}
      </ul>
    </section>
  );
}
