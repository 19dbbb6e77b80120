import {
  arrivalCheckPage,
  arrivalCheckView,
  recallPage,
  recallView,
  transferPage,
  transferView,
  type DecideArrival,
  type DecideRecall,
  type DecideTransfer,
} from '@archwright/contracts';
import { useQuery, useSuspenseQuery } from '@tanstack/react-query';
import { post, put, read } from '../api/client.js';
import { practiceQuery } from '../api/queries.js';
import { useDecision, type Decided } from '../api/use-decision.js';
import { useSession } from '../frame/use-session.js';
import { arrivalRows, recallRows, recallsUntil, transferRows } from './before-visits-view.js';

const LIMIT = 100;
const EVERY_MS = 30_000;

/** Visits whose work has not come, checks to book, cases on their way, and the decision on each. */
export function useBeforeVisits() {
  const session = useSession();
  const { today } = useSuspenseQuery(practiceQuery).data;
  const arrivals = useQuery({
    queryKey: ['arrival-checks'],
    queryFn: () => read('/arrival-checks', arrivalCheckPage, { state: 'open', limit: LIMIT }),
    refetchInterval: EVERY_MS,
  });
  const recalls = useQuery({
    queryKey: ['recalls', today],
    queryFn: () => read('/recalls', recallPage, { state: 'due', until: recallsUntil(today), limit: LIMIT }),
    refetchInterval: EVERY_MS,
  });
  const transfers = useQuery({
    queryKey: ['transfers'],
    queryFn: () => read('/transfers', transferPage, { state: 'proposed', limit: LIMIT }),
    refetchInterval: EVERY_MS,
  });
  const decideArrival = useDecision(
    ({ id, version, body }: Decided<DecideArrival>) =>
      post(`/arrival-checks/${id}/decision`, arrivalCheckView, body, version),
    ['arrival-checks', 'calls', 'case'],
  );
  const decideRecall = useDecision(
    ({ id, version, body }: Decided<DecideRecall>) => put(`/recalls/${id}/decision`, recallView, body, version),
    ['recalls', 'case', 'aftercare'],
  );
  const decideTransfer = useDecision(
    ({ id, version, body }: Decided<DecideTransfer>) => post(`/transfers/${id}/decision`, transferView, body, version),
    ['transfers', 'case'],
  );
  return {
    arrivals: { list: arrivals, rows: arrivalRows(arrivals.data?.items ?? [], today), decide: decideArrival },
    recalls: { list: recalls, rows: recallRows(recalls.data?.items ?? [], today), decide: decideRecall },
    transfers: { list: transfers, rows: transferRows(transfers.data?.items ?? [], session), decide: decideTransfer },
  };
}
