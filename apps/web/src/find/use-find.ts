import { casePage, patientPage, type CasePage, type PatientPage } from '@archwright/contracts';
import { useQueries, useSuspenseQuery } from '@tanstack/react-query';
import { read } from '../api/client.js';
import { practiceQuery } from '../api/queries.js';
import { typedDate } from './find-view.js';

/** Patients and cases that fit what was typed, a birth date too. Nothing is asked before two characters stand there. */
export function useFind(q: string, includeCases: boolean) {
  const { today } = useSuspenseQuery(practiceQuery).data;
  const day = typedDate(q, today);
  const enabled = q.length >= 2;
  const who = day === null ? { q } : { birthOn: day };
  const [patients, cases] = useQueries({
    queries: [
      {
        queryKey: ['patients', who],
        queryFn: (): Promise<PatientPage> => read('/patients', patientPage, who),
        enabled,
      },
      {
        queryKey: ['cases', 'find', q],
        queryFn: (): Promise<CasePage> => read('/cases', casePage, { q }),
        enabled: enabled && includeCases && day === null,
      },
    ],
  });
  return {
    today,
    day,
    patients: enabled ? (patients.data?.items ?? []) : [],
    cases: enabled && day === null ? (cases.data?.items ?? []) : [],
    busy: patients.isFetching || cases.isFetching,
    error: patients.error ?? cases.error,
    asked: enabled,
  };
}
