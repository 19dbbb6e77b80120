import { dispatchStep } from '@archwright/contracts';
import { useQuery, useSuspenseQuery } from '@tanstack/react-query';
import { read } from '../api/client.js';
import { practiceQuery } from '../api/queries.js';

/** One laboratory step as its bench sees it. */
export function useJob(stepId: string) {
  const practice = useSuspenseQuery(practiceQuery).data;
  const job = useQuery({
    queryKey: ['dispatch', 'job', stepId],
    queryFn: () => read(`/lab/steps/${stepId}`, dispatchStep),
    refetchInterval: 30_000,
  });
  return { practice, job };
}
