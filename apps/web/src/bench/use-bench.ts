import { dispatchView, loadView, type DispatchView, type LoadView, type PracticeView } from '@archwright/contracts';
import { queryOptions, useQuery, useSuspenseQuery } from '@tanstack/react-query';
import { read } from '../api/client.js';
import { practiceQuery } from '../api/queries.js';

type Chosen = Partial<Record<'lab' | 'from' | 'on' | 'centre', string | undefined>>;

const DAYS = 14;

/** What of the address, the practice and the person's own laboratories the bench shows. */
export function shownBench(practice: PracticeView, chosen: Chosen, ownLaboratories: readonly string[]) {
  const laboratories = practice.laboratories.filter(
    (lab) => ownLaboratories.length === 0 || ownLaboratories.includes(lab.id),
  );
  const laboratory = laboratories.find(({ id }) => id === chosen.lab) ?? laboratories[0];
  const centre = laboratory?.workCentres.find(({ id }) => id === chosen.centre)?.id;
  const from = chosen.from ?? practice.today;
  return { laboratories, laboratory, centre, from, on: chosen.on ?? from };
}

type Shown = ReturnType<typeof shownBench>;

export const loadQuery = ({ laboratory, from }: Shown) =>
  queryOptions({
    queryKey: ['load', laboratory?.id, from],
    queryFn: (): Promise<LoadView> => read('/lab/load', loadView, { laboratoryId: laboratory?.id, from, days: DAYS }),
    enabled: laboratory !== undefined,
  });

export const dispatchQuery = ({ laboratory, on, centre }: Shown) =>
  queryOptions({
    queryKey: ['dispatch', laboratory?.id, on, centre],
    queryFn: (): Promise<DispatchView> =>
      read('/lab/dispatch', dispatchView, { laboratoryId: laboratory?.id, on, workCentreId: centre }),
    enabled: laboratory !== undefined,
  });

/** Load over two weeks, and the work of one day. */
export function useBench(chosen: Chosen, ownLaboratories: readonly string[]) {
  const practice = useSuspenseQuery(practiceQuery).data;
  const shown = shownBench(practice, chosen, ownLaboratories);
  const load = useQuery({ ...loadQuery(shown), refetchInterval: 60_000 });
  const dispatch = useQuery({ ...dispatchQuery(shown), refetchInterval: 30_000 });
  return { today: practice.today, ...shown, load, dispatch };
}
