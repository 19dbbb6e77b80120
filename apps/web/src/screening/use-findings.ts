import {
  screeningFindingPage,
  screeningFindingView,
  type ScreeningFindingPage,
  type ScreeningFindingView,
} from '@archwright/contracts';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { put, read } from '../api/client.js';

const KEY = 'screening-findings';
/** Short enough that what was just recorded is spoken of while the patient is in the chair. */
const AT_STAGE_MS = 10_000;

/** What nobody has looked at yet, the latest first, and the way to say that one has. */
export function useFindings() {
  const client = useQueryClient();
  const list = useQuery({
    queryKey: [KEY],
    queryFn: (): Promise<ScreeningFindingPage> => read('/screening-findings', screeningFindingPage, { seen: 'no' }),
    refetchInterval: 60_000,
  });
  const see = useMutation({
    mutationFn: ({ id, version }: ScreeningFindingView) =>
      put(`/screening-findings/${id}/seen`, screeningFindingView, undefined, version),
    onSettled: () => client.invalidateQueries({ queryKey: [KEY] }),
  });
  return { list, see };
}

/** What stands out among the values of one visit, seen or not. */
export const useFindingsAt = (stageId: string) =>
  useQuery({
    queryKey: [KEY, stageId],
    queryFn: (): Promise<ScreeningFindingPage> => read('/screening-findings', screeningFindingPage, { stageId }),
    refetchInterval: AT_STAGE_MS,
    placeholderData: undefined,
  });
