import { remakeLog, type RemakeLog } from '@archwright/contracts';
import { useInfiniteQuery } from '@tanstack/react-query';
import { read } from '../api/client.js';
import type { Period } from './remake-log-view.js';

type Chosen = Partial<Record<'cause' | 'origin', string | undefined>>;

/** What was made again in a period, page by page; nothing is asked while there is no period. */
export function useRemakeLog(period: Period | null, { cause, origin }: Chosen) {
  return useInfiniteQuery({
    queryKey: ['remake-log', period, cause, origin],
    queryFn: ({ pageParam }): Promise<RemakeLog> =>
      read('/lab/remakes', remakeLog, {
        fromOn: period?.from,
        untilOn: period?.until,
        cause,
        origin,
        cursor: pageParam,
      }),
    initialPageParam: undefined as string | undefined,
    getNextPageParam: ({ next }) => next ?? undefined,
    enabled: period !== null,
  });
}
