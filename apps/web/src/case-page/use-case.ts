import {
  caseStateEffects,
  caseView,
  reminderView,
  type CaseState,
  type CaseView,
  type ChangeCaseState,
  type ConfirmHold,
  type RecordConsent,
} from '@archwright/contracts';
import { queryOptions, useMutation, useQuery, useQueryClient, useSuspenseQuery } from '@tanstack/react-query';
import { z } from 'zod';
import { post, put, read, remove } from '../api/client.js';
import { practiceQuery } from '../api/queries.js';

const reminderList = z.object({ items: z.array(reminderView) });

export const caseQuery = (caseId: string) =>
  queryOptions({
    queryKey: ['case', caseId],
    queryFn: (): Promise<CaseView> => read(`/cases/${caseId}`, caseView),
  });

/** One case, its reminders, and the changes that can be made to it as a whole. */
export function useCase(caseId: string, withReminders: boolean) {
  const client = useQueryClient();
  const practice = useSuspenseQuery(practiceQuery).data;
  const view = useQuery({ ...caseQuery(caseId), refetchInterval: 30_000 });
  const reminders = useQuery({
    queryKey: ['case', caseId, 'reminders'],
    queryFn: () => read(`/cases/${caseId}/reminders`, reminderList),
    enabled: withReminders,
  });
  const keep = (saved: CaseView): Promise<void> => {
    client.setQueryData(['case', caseId], saved);
    return client.invalidateQueries({ queryKey: ['case', caseId, 'reminders'] });
  };
  const saved = {
    onSuccess: keep,
    // Somebody else was faster: the newest state comes in beside what is typed.
    onError: () => client.invalidateQueries({ queryKey: ['case', caseId], exact: true }),
  };
  const version = view.data?.version ?? 0;
  const consent = useMutation({
    mutationFn: (body: RecordConsent) => put(`/cases/${caseId}/consent`, caseView, body, version),
    ...saved,
  });
  const state = useMutation({
    mutationFn: (body: ChangeCaseState) => put(`/cases/${caseId}/state`, caseView, body, version),
    ...saved,
  });
  const confirm = useMutation({
    mutationFn: ({ id, planHash, firm }: { id: string } & ConfirmHold) =>
      post(`/holds/${id}/confirm`, caseView, { planHash, firm }),
    onSuccess: keep,
  });
  const release = useMutation({
    mutationFn: (id: string) => remove(`/holds/${id}`, z.unknown()),
    onSuccess: () => client.invalidateQueries({ queryKey: ['case', caseId] }),
  });
  return { practice, view, reminders, consent, state, confirm, release };
}

/**
 * What a change of state would do to the case as it is seen, asked before it is made. A change of the case makes it another
 * question; asked again by itself, it would be about a state that the case has left.
 */
export const useStateEffects = ({ id, version }: CaseView, to: CaseState | undefined) =>
  useQuery({
    queryKey: ['state-effects', id, version, to],
    queryFn: () => read(`/cases/${id}/state-effects`, caseStateEffects, { to }),
    enabled: to !== undefined,
    meta: { isLive: false },
  });
