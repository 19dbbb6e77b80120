import { visitProposal, visitProposals, type VisitProposal } from '@archwright/contracts';
import { useMutation, useQuery, useQueryClient, useSuspenseQuery } from '@tanstack/react-query';
import { post, read } from '../api/client.js';
import { practiceQuery } from '../api/queries.js';

/** What laboratories propose that moves visits, and the way to accept one. */
export function useVisitProposals() {
  const client = useQueryClient();
  const practice = useSuspenseQuery(practiceQuery).data;
  const list = useQuery({
    queryKey: ['visit-proposals'],
    queryFn: () => read('/visit-proposals', visitProposals),
    refetchInterval: 30_000,
  });
  const accept = useMutation({
    mutationFn: ({ id, version }: VisitProposal) =>
      post(`/visit-proposals/${id}/acceptance`, visitProposal, undefined, version),
    // Visits, calls, benches: nearly everything shown may have moved.
    onSettled: () => client.invalidateQueries(),
  });
  return { practice, list, accept };
}
