import { toothChoiceView, type ChooseTeeth, type ToothChoiceView } from '@archwright/contracts';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { put, read } from '../api/client.js';
import { isOutrun } from '../look/outrun.js';

interface KeepTeeth {
  body: ChooseTeeth;
  version: number;
  /** Hears of it also when the screen was left meanwhile. */
  onSaved: (saved: ToothChoiceView) => void;
}

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
    mutationFn: ({ body, version }: KeepTeeth) => put(path, toothChoiceView, body, version),
    onSuccess: (saved, { onSaved }) => {
      client.setQueryData(key, saved);
      onSaved(saved);
      void client.invalidateQueries({ queryKey: ['stage', stageId] });
    },
    onError: (error) => (isOutrun(error) ? client.invalidateQueries({ queryKey: key }) : undefined),
  });
  return { choice, keep };
}
