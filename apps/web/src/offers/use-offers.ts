import {
  caseView,
  holdView,
  offersView,
  type CaseView,
  type ConfirmHold,
  type CreateHold,
  type HoldView,
  type OffersView,
  type RequestOffers,
} from '@archwright/contracts';
import { useMutation, useQuery, useQueryClient, useSuspenseQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { z } from 'zod';
import { post, read, remove } from '../api/client.js';
import { practiceQuery } from '../api/queries.js';
import { offersOfConflict } from './offers-view.js';

const OFFERS = 3;

/**
 * Offers of one case, holding one, confirming or releasing it. A conflict puts fresh offers in place of the old.
 *
 * @param review a check after placement that is due; with it, nothing else is planned
 */
export function useOffers(caseId: string, review: string | undefined) {
  const client = useQueryClient();
  const practice = useSuspenseQuery(practiceQuery).data;
  const firstRequest: RequestOffers = { count: OFFERS, ...(review ? { review } : {}) };
  const [request, setRequest] = useState<RequestOffers>(firstRequest);
  const [held, setHeld] = useState<{ hold: HoldView; offerId: string } | null>(null);
  const [wasTaken, setWasTaken] = useState(false);
  const offersKey = ['offers', caseId, request];

  const view = useQuery({
    queryKey: ['case', caseId],
    queryFn: (): Promise<CaseView> => read(`/cases/${caseId}`, caseView),
  });
  const offers = useQuery({
    queryKey: offersKey,
    queryFn: (): Promise<OffersView> => post(`/cases/${caseId}/offers`, offersView, request),
    staleTime: Infinity,
    gcTime: 0,
    retry: false,
    // Somebody is reading them out; what became impossible is refused when it is held.
    meta: { isLive: false },
  });

  function takeFresh(error: unknown): void {
    const fresh = offersOfConflict(error);
    if (!fresh) return;
    setHeld(null);
    setWasTaken(true);
    client.setQueryData(offersKey, fresh);
  }

  const hold = useMutation({
    mutationFn: ({ offerId, kind }: CreateHold) => post(`/cases/${caseId}/holds`, holdView, { offerId, kind }),
    onSuccess: (made, { offerId }) => {
      setWasTaken(false);
      setHeld({ hold: made, offerId });
    },
    onError: takeFresh,
  });
  const confirm = useMutation({
    mutationFn: ({ id, planHash, firm }: { id: string } & ConfirmHold) =>
      post(`/holds/${id}/confirm`, caseView, { planHash, firm }),
    onSuccess: (confirmed) => {
      client.setQueryData(['case', caseId], confirmed);
    },
    onError: takeFresh,
  });
  const release = useMutation({
    mutationFn: (id: string) => remove(`/holds/${id}`, z.unknown()),
    onSuccess: async () => {
      setHeld(null);
      await client.invalidateQueries({ queryKey: ['case', caseId] });
    },
  });
  return { practice, view, offers, request, setRequest, firstRequest, held, hold, confirm, release, wasTaken };
}
