import type { OpenAlert } from '../alerts/open-alerts.js';
import { CaseLink } from '../lab-case/case-link.js';
import { Mark } from '../look/marks.js';
import { benchWords as words } from '../words/bench.js';

/** Cases that must not go past their present step until the clinic has decided; nothing when there are none. */
export function PauseList({ rows }: { rows: OpenAlert[] }) {
  if (rows.length === 0) return null;
  return (
    <section className="stack-tight" aria-labelledby="pauses">
      <h2 id="pauses">{words.pauseTitle}</h2>
      <ul className="sheet lines">
        {rows.map((row) => (
          <li key={row.id} className="line risk">
            <Mark shape="needs-person" />
            <div className="stack-none">
              <p>
                <CaseLink caseId={row.caseId} number={row.caseNumber} /> {row.reason}
              </p>
              <p className="small soft">{words.pauseUntil(row.deadline)}</p>
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
}
