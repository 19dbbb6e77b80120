import { appointmentView, dayBoard, type DayBoard, type VisitAction } from '@archwright/contracts';
import { queryOptions, useMutation, useQuery, useQueryClient, useSuspenseQuery } from '@tanstack/react-query';
import { post, read } from '../api/client.js';
import { practiceQuery } from '../api/queries.js';

const AFFECTED: readonly string[] = ['day', 'calls', 'case'];

/** The day board of one date, of one clinic or of all. */
export const dayQuery = (day: string, clinicId: string | undefined) =>
  queryOptions({
    queryKey: ['day', day, clinicId],
    queryFn: (): Promise<DayBoard> => read('/appointments', dayBoard, { on: day, clinicId }),
  });

/** The day board of one date, and what a person may do with its visits. */
export function useDeskDay(on: string | undefined, clinicId: string | undefined) {
  const client = useQueryClient();
  const practice = useSuspenseQuery(practiceQuery).data;
  const day = on ?? practice.today;
  const board = useQuery({ ...dayQuery(day, clinicId), refetchInterval: 30_000 });
  const act = useMutation({
    mutationFn: ({ id, version, action }: { id: string; version: number } & VisitAction) =>
      post(`/appointments/${id}/actions`, appointmentView, { action }, version),
    // A missed visit asks for a call, and changes its case.
    onSettled: () =>
      client.invalidateQueries({ predicate: ({ queryKey: [subject] }) => AFFECTED.includes(String(subject)) }),
  });
  return { practice, day, board, act };
}
