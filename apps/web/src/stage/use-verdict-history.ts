import { verdictHistory, type VerdictHistory } from '@archwright/contracts';
import { useQuery } from '@tanstack/react-query';
import { read } from '../api/client.js';

/** What the checks said of a stage over time. */
export const useVerdictHistory = (stageId: string, isWanted: boolean) =>
  useQuery({
    queryKey: ['verdict-history', stageId],
    queryFn: (): Promise<VerdictHistory> => read(`/stages/${stageId}/verdict-history`, verdictHistory),
    enabled: isWanted,
    staleTime: 0,
  });
