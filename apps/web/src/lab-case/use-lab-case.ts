import { labCaseView, type LabCaseView } from '@archwright/contracts';
import { useQuery, useSuspenseQuery } from '@tanstack/react-query';
import { read } from '../api/client.js';
import { practiceQuery } from '../api/queries.js';
import { useCaseLots } from '../lots/use-lots.js';

/** One case as its laboratory may see it. */
export function useLabCase(caseId: string) {
  const practice = useSuspenseQuery(practiceQuery).data;
  const view = useQuery({
    queryKey: ['lab-case', caseId],
    queryFn: (): Promise<LabCaseView> => read(`/cases/${caseId}`, labCaseView),
    refetchInterval: 30_000,
  });
  return { practice, view, lots: useCaseLots(caseId) };
}
