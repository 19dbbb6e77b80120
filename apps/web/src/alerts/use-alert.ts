import { remakeAlertView, type AcceptProposal, type DismissAlert, type RemakeAlertView } from '@archwright/contracts';
import { useMutation, useQuery, useQueryClient, useSuspenseQuery } from '@tanstack/react-query';
import { post, read } from '../api/client.js';
import { practiceQuery } from '../api/queries.js';

/** One alert, asked again until proposals have been worked out, and the two ways to decide it. */
export function useAlert(alertId: string) {
  const client = useQueryClient();
  const practice = useSuspenseQuery(practiceQuery).data;
  const key = ['alert', alertId];
  const alert = useQuery({
    queryKey: key,
    queryFn: (): Promise<RemakeAlertView> => read(`/remake-alerts/${alertId}`, remakeAlertView),
    refetchInterval: (query) => (query.state.data?.state === 'open' ? 1500 : 30_000),
    placeholderData: undefined,
  });
  const settled = {
    onSuccess: async (decided: RemakeAlertView): Promise<void> => {
      client.setQueryData(key, decided);
      await client.invalidateQueries({ predicate: (query) => query.queryKey[0] !== 'alert' });
    },
    onError: (): void => {
      void client.invalidateQueries({ queryKey: key });
    },
  };
  const accept = useMutation({
    mutationFn: (body: AcceptProposal) =>
      post(`/remake-alerts/${alertId}/acceptance`, remakeAlertView, body, alert.data?.version),
    ...settled,
  });
  const dismiss = useMutation({
    mutationFn: (body: DismissAlert) =>
      post(`/remake-alerts/${alertId}/dismissal`, remakeAlertView, body, alert.data?.version),
    ...settled,
  });
  return { practice, alert, accept, dismiss };
}
