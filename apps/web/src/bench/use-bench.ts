import { dispatchView, loadView, type DispatchView, type LoadView } from '@archwright/contracts';
import { useQuery, useSuspenseQuery } from '@tanstack/react-query';
import { read } from '../api/client.js';
import { practiceQuery } from '../api/queries.js';

type Chosen = Partial<Record<'lab' | 'from' | 'on' | 'centre', string | undefined>>;

const DAYS = 14;

/** Load over two weeks, and the work of one day. */
export function useBench(chosen: Chosen, ownLaboratories: readonly string[]) {
  const practice = useSuspenseQuery(practiceQuery).data;
  const laboratories = practice.laboratories.filter(
    (lab) => ownLaboratories.length === 0 || ownLaboratories.includes(lab.id),
  );
  const laboratory = laboratories.find(({ id }) => id === chosen.lab) ?? laboratories[0];
  const laboratoryId = laboratory?.id;
  const centre = laboratory?.workCentres.find(({ id }) => id === chosen.centre)?.id;
  const from = chosen.from ?? practice.today;
  const on = chosen.on ?? from;
  const load = useQuery({
    queryKey: ['load', laboratoryId, from],
    queryFn: (): Promise<LoadView> => read('/lab/load', loadView, { laboratoryId, from, days: DAYS }),
    enabled: laboratoryId !== undefined,
    refetchInterval: 60_000,
  });
  const dispatch = useQuery({
    queryKey: ['dispatch', laboratoryId, on, centre],
    queryFn: (): Promise<DispatchView> =>
      read('/lab/dispatch', dispatchView, { laboratoryId, on, workCentreId: centre }),
    enabled: laboratoryId !== undefined,
    refetchInterval: 30_000,
  });
  return { today: practice.today, laboratories, laboratory, centre, from, on, load, dispatch };
}
