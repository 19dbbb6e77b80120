import { CaseLink } from '../lab-case/case-link.js';
import { Mark } from '../look/marks.js';
import { Refusal } from '../look/notice.js';
import { alertRows } from '../stage-board/stage-board-view.js';
import { useAlerts } from '../stage-board/use-stage-board.js';
import { benchWords as words } from '../words/bench.js';

/** Cases that must not go past their present step until the clinic has decided; nothing when there are none. */
export function PauseList({ today, zone }: { today: string; zone: string }) {
  const alerts = useAlerts();
  const rows = alertRows(alerts.data?.items ?? [], zone, today);
  if (rows.length === 0) return <Refusal error={alerts.error} onRetry={() => void alerts.refetch()} />;
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
