import { materialLotPage, materialLotView, type RecordMaterialLot } from '@archwright/contracts';
import { useMutation, useQuery, useQueryClient, useSuspenseQuery } from '@tanstack/react-query';
import { post, read } from '../api/client.js';
import { practiceQuery } from '../api/queries.js';

const LIMIT = 100;

/** Where a lot went; nothing is asked before there is one to ask for. */
export function useLots(lot: string, material: string) {
  const practice = useSuspenseQuery(practiceQuery).data;
  const found = useQuery({
    queryKey: ['material-lots', lot, material],
    queryFn: () => read('/material-lots', materialLotPage, { lot, material, limit: LIMIT }),
    enabled: lot !== '',
  });
  return { practice, found };
}

/** What went into a case, the newest first. */
export function useCaseLots(caseId: string) {
  return useQuery({
    queryKey: ['material-lots', 'case', caseId],
    queryFn: () => read('/material-lots', materialLotPage, { caseId, limit: LIMIT }),
  });
}

/** Notes a lot at the job that it is used for. */
export function useNoteLot(stepId: string) {
  const client = useQueryClient();
  return useMutation({
    mutationFn: (body: RecordMaterialLot) => post(`/lab/steps/${stepId}/material-lots`, materialLotView, body),
    onSettled: () => client.invalidateQueries({ queryKey: ['material-lots'] }),
  });
}
