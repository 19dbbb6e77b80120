import {
  caseView,
  patientPage,
  patientView,
  type OpenCase,
  type PatientPage,
  type PatientView,
} from '@archwright/contracts';
import { useMutation, useQuery, useSuspenseQuery } from '@tanstack/react-query';
import { post, read } from '../api/client.js';
import { practiceQuery } from '../api/queries.js';

/** Everything the one-page flow needs: the practice, patients that fit, the chosen patient, and opening. */
export function useOpenCase(q: string, patientId: string | null) {
  const practice = useSuspenseQuery(practiceQuery).data;
  const found = useQuery({
    queryKey: ['patients', q],
    queryFn: (): Promise<PatientPage> => read('/patients', patientPage, { q, limit: 8 }),
    enabled: patientId === null && q.trim().length >= 2,
  });
  const patient = useQuery({
    queryKey: ['patient', patientId],
    queryFn: (): Promise<PatientView> => read(`/patients/${patientId ?? ''}`, patientView),
    enabled: patientId !== null,
    placeholderData: undefined,
  });
  const open = useMutation({ mutationFn: (body: OpenCase) => post('/cases', caseView, body) });
  return { practice, found, patient, open };
}
