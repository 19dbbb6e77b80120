import { casePage, patientPage, type CasePage, type PatientPage } from '@archwright/contracts';
import { useQueries } from '@tanstack/react-query';
import { read } from '../api/client.js';
import { practiceQuery } from '../api/queries.js';

/** Patients and cases that fit what was typed. Nothing is asked before two characters stand there. */
export function useFind(q: string, includeCases: boolean) {
  const enabled = q.length >= 2;
  const [practice, patients, cases] = useQueries({
    queries: [
      practiceQuery,
      {
        queryKey: ['patients', q],
        queryFn: (): Promise<PatientPage> => read('/patients', patientPage, { q }),
        enabled,
      },
      {
        queryKey: ['cases', 'find', q],
        queryFn: (): Promise<CasePage> => read('/cases', casePage, { q }),
        enabled: enabled && includeCases,
      },
    ],
  });
  return {
    today: practice.data?.today ?? null,
    patients: enabled ? (patients.data?.items ?? []) : [],
    cases: enabled ? (cases.data?.items ?? []) : [],
    busy: patients.isFetching || cases.isFetching,
    error: patients.error ?? cases.error,
    asked: enabled,
  };
}
