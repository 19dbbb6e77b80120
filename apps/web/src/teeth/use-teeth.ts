import { toothChoiceView, type ChooseTeeth, type ToothChoiceView } from '@archwright/contracts';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { put, read } from '../api/client.js';

/** The choice of teeth of a stage's case, and the way to keep another one. */
export function useTeeth(stageId: string) {
  const client = useQueryClient();
  const key = ['tooth-choice', stageId];
  const path = `/stages/${stageId}/tooth-choice`;
  const choice = useQuery({
    queryKey: key,
    queryFn: (): Promise<ToothChoiceView> => read(path, toothChoiceView),
    placeholderData: undefined,
  });
  const keep = useMutation({
    mutationFn: ({ body, version }: { body: ChooseTeeth; version: number }) =>
      put(path, toothChoiceView, body, version),
    onSuccess: (saved) => {
      client.setQueryData(key, saved);
      void client.invalidateQueries({ queryKey: ['stage', stageId] });
    },
  });
  return { choice, keep };
}
