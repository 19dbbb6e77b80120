import { photographList, photographView } from '@archwright/contracts';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { post, read } from '../api/client.js';
import { asJpeg } from './as-jpeg.js';

/** Photographs of one visit, and what is done with them. */
export function usePhotographs(stageId: string) {
  const client = useQueryClient();
  const path = `/stages/${stageId}/photographs`;
  const kept = useQuery({
    queryKey: ['stage', stageId, 'photographs'],
    queryFn: () => read(path, photographList),
    placeholderData: undefined,
  });
  // The visit has a new version with each of them.
  const again = { onSettled: () => client.invalidateQueries({ queryKey: ['stage', stageId] }) };
  const keep = useMutation({
    mutationFn: async ({ caption, file }: { caption: string; file: File }) =>
      post(path, photographView, { caption, jpeg: await asJpeg(file) }),
    ...again,
  });
  const remove = useMutation({
    mutationFn: ({ id, reason }: { id: string; reason: string }) =>
      post(`${path}/${id}/removal`, photographView, { reason }),
    ...again,
  });
  return { kept, keep, remove };
}
