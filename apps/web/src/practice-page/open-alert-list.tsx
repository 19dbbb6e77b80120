import type { PracticeView } from '@archwright/contracts';
import { Refusal } from '../look/notice.js';
import { AlertList } from '../stage-board/alert-list.js';
import { alertRows } from '../stage-board/stage-board-view.js';
import { useAlerts } from '../stage-board/use-stage-board.js';
import { practiceZone } from '../time/practice-zone.js';
import { practiceWords as words } from '../words/practice.js';

/** Alerts that wait for a decision, or the good news that none does. */
export function OpenAlertList({ practice }: { practice: PracticeView }) {
  const alerts = useAlerts();
  const rows = alertRows(alerts.data?.items ?? [], practiceZone(practice), practice.today);
  return (
    <>
      <Refusal error={alerts.error} onRetry={() => void alerts.refetch()} />
      <AlertList rows={rows} />
      {alerts.data && rows.length === 0 ? <p className="soft">{words.nothingWaits}</p> : null}
    </>
  );
}
