import {
  dispatchStep,
  dispatchView,
  loadView,
  type DispatchView,
  type LabStepAction,
  type LoadView,
} from '@archwright/contracts';
import { useMutation, useQuery, useQueryClient, useSuspenseQuery } from '@tanstack/react-query';
import { post, read } from '../api/client.js';
import { practiceQuery } from '../api/queries.js';

interface Chosen {
  lab: string | undefined;
  from: string | undefined;
  on: string | undefined;
  centre: string | undefined;
}

const DAYS = 14;

/** Load over two weeks, the work of one day, and what may be done with a step. */
export function useBench(chosen: Chosen, ownLaboratories: readonly string[]) {
  const client = useQueryClient();
  const practice = useSuspenseQuery(practiceQuery).data;
  const laboratories = practice.laboratories.filter(
    (lab) => ownLaboratories.length === 0 || ownLaboratories.includes(lab.id),
  );
  const laboratoryId = chosen.lab ?? laboratories[0]?.id;
  const from = chosen.from ?? practice.today;
  const on = chosen.on ?? from;
  const load = useQuery({
    queryKey: ['load', laboratoryId, from],
    queryFn: (): Promise<LoadView> => read('/lab/load', loadView, { laboratoryId, from, days: DAYS }),
    enabled: laboratoryId !== undefined,
    refetchInterval: 60_000,
  });
  const dispatch = useQuery({
    queryKey: ['dispatch', laboratoryId, on, chosen.centre],
    queryFn: (): Promise<DispatchView> =>
      read('/lab/dispatch', dispatchView, { laboratoryId, on, workCentreId: chosen.centre }),
    enabled: laboratoryId !== undefined,
    refetchInterval: 30_000,
  });
  const act = useMutation({
    mutationFn: ({ id, version, action }: { id: string; version: number; action: LabStepAction }) =>
      post(`/lab/steps/${id}/actions`, dispatchStep, action, version),
    onSettled: () =>
      client.invalidateQueries({
        predicate: (query) => query.queryKey[0] === 'dispatch' || query.queryKey[0] === 'load',
      }),
  });
  return { practice, laboratories, laboratoryId, from, on, load, dispatch, act };
}
