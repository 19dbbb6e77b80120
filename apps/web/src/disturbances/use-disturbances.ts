import {
  disturbancePage,
  disturbanceSubjects,
  disturbanceView,
  type DisturbanceView,
  type EnterDisturbance,
} from '@archwright/contracts';
import { useMutation, useQuery, useQueryClient, useSuspenseQuery } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { post, read } from '../api/client.js';
import { practiceQuery } from '../api/queries.js';

/** What has been entered, what can fall away, and the way to enter it. */
export function useDisturbances() {
  const client = useQueryClient();
  const navigate = useNavigate();
  const practice = useSuspenseQuery(practiceQuery).data;
  const list = useQuery({
    queryKey: ['disturbances'],
    queryFn: () => read('/disturbances', disturbancePage, { limit: 50 }),
    refetchInterval: 30_000,
  });
  const subjects = useQuery({
    queryKey: ['disturbance-subjects'],
    queryFn: () => read('/disturbances/subjects', disturbanceSubjects),
  });
  const enter = useMutation({
    mutationFn: (body: EnterDisturbance) => post('/disturbances', disturbanceView, body),
    onSuccess: async (entered: DisturbanceView) => {
      client.setQueryData(['disturbance', entered.id], entered);
      await client.invalidateQueries({ queryKey: ['disturbances'] });
      await navigate({ to: '/desk/falls-away/$disturbanceId', params: { disturbanceId: entered.id } });
    },
  });
  return { practice, list, subjects, enter };
}
