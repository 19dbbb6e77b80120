import { openAlerts, useAlerts, type OpenAlert } from '../alerts/open-alerts.js';
import { useOpenQuestions } from '../lab-questions/use-open-questions.js';
import { useFindings } from '../screening/use-findings.js';

interface Waiting {
  alerts: ReturnType<typeof useAlerts>;
  rows: OpenAlert[];
  /** Until every list has been answered or refused: shown one by one, each would push away what stands below. */
  isPending: boolean;
  /** Undefined while not every answer is known. */
  count: number | undefined;
}

/** What waits for a person in the practice, and what only stands out. */
export function useWaiting(zone: string, today: string): Waiting {
  const alerts = useAlerts();
  const questions = useOpenQuestions();
  const { list: findings } = useFindings();
  const rows = openAlerts(alerts.data?.items ?? [], zone, today);
  return {
    alerts,
    rows,
    isPending: [alerts, questions, findings].some(({ isPending }) => isPending),
    count: alerts.data && questions.data ? rows.length + questions.data.items.length : undefined,
  };
}
