import { workloadRun, workloadView, type WorkloadView } from '@archwright/contracts';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { post, read } from '../api/client.js';
import { isUnderWay } from './workload-view.js';

const WATCHED_MS = 1_000;
const AT_REST_MS = 60_000;

interface Versioned {
  id: string;
  version: number;
}

/** The latest search of a laboratory, and what a coordinator does with it. */
export function useWorkload(laboratoryId: string) {
  const client = useQueryClient();
  const latest = useQuery({
    queryKey: ['workload', laboratoryId],
    queryFn: (): Promise<WorkloadView> => read('/lab/workload', workloadView, { laboratoryId }),
    refetchInterval: ({ state }) => (isUnderWay(state.data?.run ?? null) ? WATCHED_MS : AT_REST_MS),
  });
  const isTouched = ({ queryKey }: { queryKey: readonly unknown[] }): boolean =>
    queryKey[0] === 'workload' || queryKey[0] === 'load' || queryKey[0] === 'dispatch';
  const onSettled = () => client.invalidateQueries({ predicate: isTouched });
  const look = useMutation({
    mutationFn: () => post('/lab/workload/runs', workloadRun, { laboratoryId }),
    onSettled,
  });
  const cancel = useMutation({
    mutationFn: ({ id, version }: Versioned) =>
      post(`/lab/workload/runs/${id}/cancel`, workloadRun, undefined, version),
    onSettled,
  });
  const accept = useMutation({
    mutationFn: ({ id, version }: Versioned) =>
      post(`/lab/workload/proposals/${id}/accept`, workloadRun, undefined, version),
    onSettled,
  });
  return { latest, look, cancel, accept };
}
