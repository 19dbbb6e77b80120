import { callList, callTaskView, type CallList, type RecordCall } from '@archwright/contracts';
import { queryOptions, useMutation, useQuery, useQueryClient, useSuspenseQuery } from '@tanstack/react-query';
import { post, read } from '../api/client.js';
import { practiceQuery } from '../api/queries.js';
import { viewerZone } from '../time/zone.js';
import { shapeCalls } from './call-list-view.js';

export const callsQuery = queryOptions({
  queryKey: ['calls'],
  queryFn: (): Promise<CallList> => read('/call-tasks', callList),
});

/** Calls to make, and how each went. */
export function useCalls() {
  const client = useQueryClient();
  const practice = useSuspenseQuery(practiceQuery).data;
  const list = useQuery({ ...callsQuery, refetchInterval: 30_000 });
  const record = useMutation({
    mutationFn: ({ id, version, outcome }: { id: string; version: number } & RecordCall) =>
      post(`/call-tasks/${id}/attempts`, callTaskView, { outcome }, version),
    onSettled: () => client.invalidateQueries({ queryKey: ['calls'] }),
  });
  const clock = { viewer: viewerZone(), today: practice.today };
  return { list, rows: list.data ? shapeCalls(list.data, clock) : [], record };
}
