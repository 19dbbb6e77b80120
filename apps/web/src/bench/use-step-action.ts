import { dispatchStep, type LabStepAction } from '@archwright/contracts';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { post } from '../api/client.js';

/**
 * What is done with one step. Whatever comes of it, list and load are read again.
 *
 * @param onDone called even when the step has left the list meanwhile, as a rejected one does
 */
export function useStepAction(
  { id, version }: { id: string; version: number },
  onDone: (action: LabStepAction['action']) => void,
) {
  const client = useQueryClient();
  return useMutation({
    mutationFn: (action: LabStepAction) => post(`/lab/steps/${id}/actions`, dispatchStep, action, version),
    onSuccess: (_, { action }) => {
      onDone(action);
    },
    onSettled: () =>
      client.invalidateQueries({
        predicate: (query) => query.queryKey[0] === 'dispatch' || query.queryKey[0] === 'load',
      }),
  });
}
