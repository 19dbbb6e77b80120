import { patientView, type CreatePatient, type PatientView } from '@archwright/contracts';
import { useMutation, useQuery, useQueryClient, useSuspenseQuery } from '@tanstack/react-query';
import { put, read } from '../api/client.js';
import { practiceQuery } from '../api/queries.js';

/** One patient with their cases, and saving what was changed. */
export function usePatient(patientId: string) {
  const client = useQueryClient();
  const practice = useSuspenseQuery(practiceQuery).data;
  const patient = useQuery({
    queryKey: ['patient', patientId],
    queryFn: (): Promise<PatientView> => read(`/patients/${patientId}`, patientView),
  });
  const save = useMutation({
    mutationFn: ({ body, version }: { body: CreatePatient; version: number }) =>
      put(`/patients/${patientId}`, patientView, body, version),
    onSuccess: (saved) => {
      client.setQueryData(['patient', patientId], saved);
    },
  });
  return { practice, patient, save };
}
