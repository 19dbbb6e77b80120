import { labOrderPage, labOrderView, type LabOrderAction, type LabOrderPage } from '@archwright/contracts';
import { useInfiniteQuery, useMutation, useQueryClient, useSuspenseQuery } from '@tanstack/react-query';
import { post, read } from '../api/client.js';
import { practiceQuery } from '../api/queries.js';

/** Orders that this person's side has sent or received, the newest first, page by page. */
export function useLabOrders() {
  const practice = useSuspenseQuery(practiceQuery).data;
  const orders = useInfiniteQuery({
    queryKey: ['lab-orders'],
    queryFn: ({ pageParam }): Promise<LabOrderPage> =>
      read('/lab-orders', labOrderPage, { limit: 50, cursor: pageParam }),
    initialPageParam: undefined as string | undefined,
    getNextPageParam: ({ next }) => next ?? undefined,
    // The other side is another organisation, whose changes no stream tells of.
    refetchInterval: 30_000,
  });
  return { practice, orders };
}

/** The word on one order; whatever comes of it, the orders are read again. */
export function useOrderAction({ id, version }: { id: string; version: number }) {
  const client = useQueryClient();
  return useMutation({
    mutationFn: (action: LabOrderAction) => post(`/lab-orders/${id}/actions`, labOrderView, action, version),
    onSettled: () => client.invalidateQueries({ queryKey: ['lab-orders'] }),
  });
}
