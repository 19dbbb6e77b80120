import { alertPage, type AlertPage, type RemakeAlertView } from '@archwright/contracts';
import { useQuery } from '@tanstack/react-query';
import { read } from '../api/client.js';
import { dateAndTime } from '../time/wording.js';
import { boardWords } from '../words/chair.js';
import { isUndecided } from './undecided.js';

export interface OpenAlert {
  id: string;
  caseId: string;
  caseNumber: string;
  /** Empty for a laboratory. */
  patientName: string;
  reason: string;
  deadline: string;
}

/** Undecided alerts, the one to be decided first on top. */
export function openAlerts(alerts: readonly RemakeAlertView[], zone: string, today: string): OpenAlert[] {
  return alerts
    .filter(isUndecided)
    .sort((one, other) => (one.decideBy ?? '9999').localeCompare(other.decideBy ?? '9999'))
    .map(({ id, caseId, caseNumber, patientName, reason, decideBy }) => ({
      id,
      caseId,
      caseNumber,
      patientName,
      reason,
      deadline: decideBy ? boardWords.decideBy(dateAndTime(decideBy, zone, today)) : boardWords.noDeadline,
    }));
}

/** Alerts of the person's clinics or laboratories, decided ones included. */
export const useAlerts = () =>
  useQuery({
    queryKey: ['alerts'],
    queryFn: (): Promise<AlertPage> => read('/remake-alerts', alertPage),
    refetchInterval: 20_000,
  });
