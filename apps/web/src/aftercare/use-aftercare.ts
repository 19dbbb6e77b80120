import {
  adjustmentView,
  aftercareView,
  caseView,
  referralTaskView,
  soreSpotView,
  type CaseView,
  type DecideReferral,
  type RecordAdjustment,
  type RecordHealing,
  type RecordSoreSpot,
} from '@archwright/contracts';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { post, put, read } from '../api/client.js';
import { useDecision, type Decided } from '../api/use-decision.js';

const AFFECTED = ['aftercare'];

/** Everything after placement of one case, and what a clinician records and decides about it. */
export function useAftercare(caseId: string) {
  const client = useQueryClient();
  const key = ['aftercare', caseId];
  const view = useQuery({
    queryKey: ['case', caseId],
    queryFn: (): Promise<CaseView> => read(`/cases/${caseId}`, caseView),
    // Arches and name of the case before must not stand over what was found in this one.
    placeholderData: undefined,
  });
  const aftercare = useQuery({
    queryKey: key,
    queryFn: () => read(`/cases/${caseId}/aftercare`, aftercareView),
    refetchInterval: 30_000,
    placeholderData: undefined,
  });
  const again = { onSuccess: () => client.invalidateQueries({ queryKey: key }) };
  const find = useMutation({
    mutationFn: (body: RecordSoreSpot) => post(`/cases/${caseId}/sore-spots`, soreSpotView, body),
    ...again,
  });
  const adjust = useMutation({
    mutationFn: (body: RecordAdjustment) => post(`/cases/${caseId}/adjustments`, adjustmentView, body),
    ...again,
  });
  const heal = useDecision(
    ({ id, version, body }: Decided<RecordHealing>) => put(`/sore-spots/${id}/healing`, soreSpotView, body, version),
    AFFECTED,
  );
  const refer = useDecision(
    ({ id, version, body }: Decided<DecideReferral>) =>
      put(`/referral-tasks/${id}/decision`, referralTaskView, body, version),
    AFFECTED,
  );
  return { view, aftercare, find, adjust, heal, refer };
}
