import {
  cautionList,
  cautionView,
  caseView,
  type CaseView,
  type EndCaution,
  type RecordCaution,
} from '@archwright/contracts';
import { useMutation, useQuery, useQueryClient, useSuspenseQuery } from '@tanstack/react-query';
import { post, put, read } from '../api/client.js';
import { practiceQuery } from '../api/queries.js';
import { useDecision, type Decided } from '../api/use-decision.js';

const AFFECTED = ['cautions', 'stage'];

/**
 * What to mind with the patient of a case, recording more of it and ending what no longer holds.
 *
 * @param isClinician others are not told, so nothing is asked for them
 */
export function useCautions(caseId: string, isClinician: boolean) {
  const client = useQueryClient();
  const practice = useSuspenseQuery(practiceQuery).data;
  const view = useQuery({
    queryKey: ['case', caseId],
    queryFn: (): Promise<CaseView> => read(`/cases/${caseId}`, caseView),
  });
  const patientId = view.data?.patient.id ?? '';
  const list = useQuery({
    queryKey: ['cautions', patientId],
    queryFn: () => read(`/patients/${patientId}/cautions`, cautionList),
    enabled: isClinician && patientId !== '',
    placeholderData: undefined,
  });
  const record = useMutation({
    mutationFn: (body: RecordCaution) => post(`/patients/${patientId}/cautions`, cautionView, body),
    onSettled: () =>
      client.invalidateQueries({ predicate: ({ queryKey: [subject] }) => AFFECTED.includes(String(subject)) }),
  });
  const end = useDecision(
    ({ id, version, body }: Decided<EndCaution>) => put(`/cautions/${id}/end`, cautionView, body, version),
    AFFECTED,
  );
  return { practice, view, list, record, end };
}
