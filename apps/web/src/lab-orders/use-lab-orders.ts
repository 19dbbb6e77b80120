import {
  labOrderPage,
  labOrderView,
  type LabOrderAction,
  type LabOrderPage,
  type SendLabOrder,
} from '@archwright/contracts';
import { useInfiniteQuery, useMutation, useQuery, useQueryClient, useSuspenseQuery } from '@tanstack/react-query';
import { post, read } from '../api/client.js';
import { practiceQuery } from '../api/queries.js';

/** The other side is another organisation, whose changes no stream tells of. */
const ANSWER_AFTER_MS = 30_000;

/** Orders that this person's side has sent or received, the newest first, page by page. */
export function useLabOrders() {
  const practice = useSuspenseQuery(practiceQuery).data;
  const orders = useInfiniteQuery({
    queryKey: ['lab-orders'],
    queryFn: ({ pageParam }): Promise<LabOrderPage> =>
      read('/lab-orders', labOrderPage, { limit: 50, cursor: pageParam }),
    initialPageParam: undefined as string | undefined,
    getNextPageParam: ({ next }) => next ?? undefined,
    refetchInterval: ANSWER_AFTER_MS,
  });
  return { practice, orders };
}

/** The newest order of the work that follows a stage, and a way to send one. */
export function useStageOrder(stageId: string) {
  const client = useQueryClient();
  const orders = useQuery({
    queryKey: ['lab-orders', stageId],
    queryFn: (): Promise<LabOrderPage> => read('/lab-orders', labOrderPage, { stageId, limit: 1 }),
    refetchInterval: ANSWER_AFTER_MS,
  });
  const send = useMutation({
    mutationFn: (body: SendLabOrder) => post('/lab-orders', labOrderView, body),
    onSettled: () => client.invalidateQueries({ queryKey: ['lab-orders'] }),
  });
  return { orders, send };
}

/** The word on one order; whatever comes of it, the orders are read again. */
export function useOrderAction({ id, version }: { id: string; version: number }) {
  const client = useQueryClient();
  return useMutation({
    mutationFn: (action: LabOrderAction) => post(`/lab-orders/${id}/actions`, labOrderView, action, version),
    onSettled: () => client.invalidateQueries({ queryKey: ['lab-orders'] }),
  });
}
