import {
  disturbanceView,
  type AcceptRepair,
  type DecideDisturbance,
  type DisturbanceView,
} from '@archwright/contracts';
import { useMutation, useQuery, useQueryClient, useSuspenseQuery } from '@tanstack/react-query';
import { post, read } from '../api/client.js';
import { practiceQuery } from '../api/queries.js';

/** One entry, asked again until plans have been worked out, and the ways to decide it. */
export function useDisturbance(id: string) {
  const client = useQueryClient();
  const practice = useSuspenseQuery(practiceQuery).data;
  const key = ['disturbance', id];
  const known = useQuery({
    queryKey: key,
    queryFn: () => read(`/disturbances/${id}`, disturbanceView),
    refetchInterval: ({ state }) => (state.data?.state === 'open' ? 1500 : 30_000),
    placeholderData: undefined,
  });
  const settled = {
    onSuccess: async (decided: DisturbanceView): Promise<void> => {
      client.setQueryData(key, decided);
      await client.invalidateQueries({ predicate: (query) => query.queryKey[0] !== 'disturbance' });
    },
    onError: (): void => {
      void client.invalidateQueries({ queryKey: key });
    },
  };
  const accept = useMutation({
    mutationFn: (body: AcceptRepair) =>
      post(`/disturbances/${id}/acceptance`, disturbanceView, body, known.data?.version),
    ...settled,
  });
  const decide = useMutation({
    mutationFn: (body: DecideDisturbance) =>
      post(`/disturbances/${id}/decision`, disturbanceView, body, known.data?.version),
    ...settled,
  });
  return { practice, known, accept, decide };
}
