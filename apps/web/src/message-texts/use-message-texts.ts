import { messageTextsView, type ChangeMessageTexts, type MessageTextsView } from '@archwright/contracts';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { put, read } from '../api/client.js';

export function useMessageTexts() {
  const client = useQueryClient();
  const known = useQuery({
    queryKey: ['message-texts'],
    queryFn: (): Promise<MessageTextsView> => read('/message-texts', messageTextsView),
  });
  const save = useMutation({
    mutationFn: ({ body, version }: { body: ChangeMessageTexts; version: number }) =>
      put('/message-texts', messageTextsView, body, version),
    // Samples of reminders are made of them, and the practice's lists share their version.
    onSettled: () => client.invalidateQueries(),
  });
  return { known, save };
}
