import { toothListView, type ChangeToothList, type ToothListView } from '@archwright/contracts';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { put, read } from '../api/client.js';

export function useToothList() {
  const client = useQueryClient();
  const known = useQuery({
    queryKey: ['tooth-list'],
    queryFn: (): Promise<ToothListView> => read('/tooth-list', toothListView),
  });
  const save = useMutation({
    mutationFn: ({ body, version }: { body: ChangeToothList; version: number }) =>
      put('/tooth-list', toothListView, body, version),
    // Choices of teeth carry the lists.
    onSettled: () => client.invalidateQueries(),
  });
  return { known, save };
}
