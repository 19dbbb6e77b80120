import {
  caseView,
  freedTimeView,
  ripple,
  type FreedTimeTaker,
  type FreedTimeView,
  type Ripple,
} from '@archwright/contracts';
import { useMutation, useQuery, useQueryClient, useSuspenseQuery } from '@tanstack/react-query';
import { post, read } from '../api/client.js';
import { practiceQuery } from '../api/queries.js';
import { askedTime, type FreedSearch } from './freed-time-view.js';

/** Who gains by freed time, what it would do for one of them, and doing it. */
export function useFreedTime(search: FreedSearch) {
  const client = useQueryClient();
  const practice = useSuspenseQuery(practiceQuery).data;
  const { query: asked } = askedTime(practice, search);
  const found = useQuery({
    queryKey: ['freed-time', asked],
    queryFn: (): Promise<FreedTimeView> => read('/freed-time', freedTimeView, { ...asked }),
    enabled: asked !== null,
    staleTime: Infinity,
    retry: false,
    placeholderData: undefined,
    // Somebody telephones along this list; what became impossible is refused when it is changed.
    meta: { isLive: false },
  });
  const preview = useMutation({
    mutationFn: ({ appointmentId, startsAt }: FreedTimeTaker): Promise<Ripple> =>
      post('/ripples/move', ripple, { appointmentId, startsAt, clinicianId: asked?.clinicianId, aim: 'earliest' }),
  });
  const apply = useMutation({
    mutationFn: ({ id, planHash }: Ripple) => post(`/ripples/${id}/apply`, caseView, { planHash }),
    onSuccess: (changed) => {
      client.setQueryData(['case', changed.id], changed);
      return client.invalidateQueries({
        predicate: ({ queryKey: [subject] }) => subject === 'day' || subject === 'calls',
      });
    },
  });
  return { practice, found, preview, apply };
}
