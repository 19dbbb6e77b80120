import { auditPage, userList, type AuditPage, type UserList } from '@archwright/contracts';
import { useInfiniteQuery, useQuery, useSuspenseQuery } from '@tanstack/react-query';
import { read } from '../api/client.js';
import { practiceQuery } from '../api/queries.js';

/** Entries of the trail page by page, and the people to choose from. */
export function useAuditTrail(query: Readonly<Record<string, string>> | null) {
  const practice = useSuspenseQuery(practiceQuery).data;
  const users = useQuery({ queryKey: ['users'], queryFn: (): Promise<UserList> => read('/users', userList) });
  const found = useInfiniteQuery({
    queryKey: ['audit-entries', query],
    queryFn: ({ pageParam }): Promise<AuditPage> =>
      read('/audit-entries', auditPage, { ...query, ...(pageParam === null ? {} : { cursor: pageParam }) }),
    initialPageParam: null as string | null,
    getNextPageParam: ({ next }) => next,
    enabled: query !== null,
  });
  return { practice, users, found };
}
