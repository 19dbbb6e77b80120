import {
  appointmentView,
  type AppointmentView,
  alternativesView,
  caseView,
  ripple,
  type AlternativesView,
  type CaseView,
  type PreviewCancel,
  type PreviewMove,
  type Ripple,
} from '@archwright/contracts';
import { useMutation, useQuery, useQueryClient, useSuspenseQuery } from '@tanstack/react-query';
import { post, read } from '../api/client.js';
import { practiceQuery } from '../api/queries.js';

/** One visit, other times for it, what moving or cancelling it would do, and doing exactly that. */
export function useChangeVisit(caseId: string, appointmentId: string) {
  const client = useQueryClient();
  const practice = useSuspenseQuery(practiceQuery).data;
  const view = useQuery({
    queryKey: ['case', caseId],
    queryFn: (): Promise<CaseView> => read(`/cases/${caseId}`, caseView),
  });
  const alternatives = useQuery({
    queryKey: ['alternatives', appointmentId],
    queryFn: (): Promise<AlternativesView> => read(`/appointments/${appointmentId}/alternatives`, alternativesView),
    retry: false,
    meta: { isLive: false },
  });
  const appointment = useQuery({
    queryKey: ['appointment', appointmentId],
    queryFn: (): Promise<AppointmentView> => read(`/appointments/${appointmentId}`, appointmentView),
    // What becomes free is the time that the visit had before it was changed.
    meta: { isLive: false },
  });
  const move = useMutation({ mutationFn: (body: PreviewMove) => post('/ripples/move', ripple, body) });
  const cancel = useMutation({ mutationFn: (body: PreviewCancel) => post('/ripples/cancel', ripple, body) });
  const apply = useMutation({
    mutationFn: ({ id, planHash }: Ripple) => post(`/ripples/${id}/apply`, caseView, { planHash }),
    onSuccess: (changed) => {
      client.setQueryData(['case', caseId], changed);
      return client.invalidateQueries({
        predicate: ({ queryKey: [subject, , part] }) =>
          subject === 'day' || subject === 'calls' || (subject === 'case' && part === 'reminders'),
      });
    },
  });
  return { practice, view, alternatives, appointment, move, cancel, apply };
}
