import { disturbancePage, disturbanceSubjects } from '@archwright/contracts';
import { useQuery, useSuspenseQuery } from '@tanstack/react-query';
import { read } from '../api/client.js';
import { practiceQuery } from '../api/queries.js';
import { useEnter } from './use-enter.js';

/** What has been entered, what can fall away, and the way to enter it. */
export function useDisturbances() {
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
  const enter = useEnter();
  return { practice, list, subjects, enter };
}
