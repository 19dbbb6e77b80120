import { measurementRangesView, type ChangeMeasurementRanges, type MeasurementRangesView } from '@archwright/contracts';
import { useMutation, useQuery, useQueryClient, useSuspenseQuery } from '@tanstack/react-query';
import { put, read } from '../api/client.js';
import { practiceQuery } from '../api/queries.js';

export function useRanges() {
  const client = useQueryClient();
  const practice = useSuspenseQuery(practiceQuery).data;
  const known = useQuery({
    queryKey: ['measurement-ranges'],
    queryFn: (): Promise<MeasurementRangesView> => read('/measurement-ranges', measurementRangesView),
  });
  const save = useMutation({
    mutationFn: ({ body, version }: { body: ChangeMeasurementRanges; version: number }) =>
      put('/measurement-ranges', measurementRangesView, body, version),
    // Stages carry the ranges that their values are judged by.
    onSettled: () => client.invalidateQueries(),
  });
  return { practice, known, save };
}
