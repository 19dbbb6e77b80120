import { lateStep, type LateStep, type ReportLateStep } from '@archwright/contracts';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { post } from '../api/client.js';

/** Says that a step will be late; whatever comes of it, what shows the step is read again. */
export function useReportLate(stepId: string, onDone: (late: LateStep) => void) {
  const client = useQueryClient();
  return useMutation({
    mutationFn: (body: ReportLateStep) => post(`/lab/steps/${stepId}/lateness`, lateStep, body),
    onSuccess: onDone,
    onSettled: () => client.invalidateQueries({ queryKey: ['dispatch'] }),
  });
}
