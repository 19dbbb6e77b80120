import { caseView, itinerarySent, itineraryView, type CaseView, type ItineraryView } from '@archwright/contracts';
import { useMutation, useQuery, useQueryClient, useSuspenseQuery } from '@tanstack/react-query';
import { post, read } from '../api/client.js';
import { practiceQuery } from '../api/queries.js';

/** The coming visits of a case, and telling the patient once more. */
export function useItinerary(caseId: string) {
  const client = useQueryClient();
  const practice = useSuspenseQuery(practiceQuery).data;
  const view = useQuery({
    queryKey: ['case', caseId],
    queryFn: (): Promise<CaseView> => read(`/cases/${caseId}`, caseView),
    placeholderData: undefined,
  });
  const itinerary = useQuery({
    queryKey: ['case', caseId, 'itinerary'],
    queryFn: (): Promise<ItineraryView> => read(`/cases/${caseId}/itinerary`, itineraryView),
    placeholderData: undefined,
  });
  const send = useMutation({
    mutationFn: () => post(`/cases/${caseId}/itinerary`, itinerarySent, {}),
    onSuccess: () => client.invalidateQueries({ queryKey: ['calls'] }),
  });
  return { practice, view, itinerary, send };
}
