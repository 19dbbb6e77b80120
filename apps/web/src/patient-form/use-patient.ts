import { patientView, type CreatePatient, type PatientView } from '@archwright/contracts';
import { useMutation, useQuery, useQueryClient, useSuspenseQuery } from '@tanstack/react-query';
import { put, read } from '../api/client.js';
import { hasStatus } from '../api/errors.js';
import { practiceQuery } from '../api/queries.js';

/** One patient with their cases, and saving what was changed. */
export function usePatient(patientId: string) {
  const client = useQueryClient();
  const practice = useSuspenseQuery(practiceQuery).data;
  const patient = useQuery({
    queryKey: ['patient', patientId],
    queryFn: (): Promise<PatientView> => read(`/patients/${patientId}`, patientView),
    // The person before must not be taken for this one while this one is fetched.
    placeholderData: undefined,
  });
  const save = useMutation({
    mutationFn: ({ body, version }: { body: CreatePatient; version: number }) =>
      put(`/patients/${patientId}`, patientView, body, version),
    onSuccess: (saved) => {
      client.setQueryData(['patient', patientId], saved);
    },
    onError: (error) => {
      if (hasStatus(error, 412)) return client.invalidateQueries({ queryKey: ['patient', patientId] });
      return undefined;
    },
  });
  return { practice, patient, save };
}
