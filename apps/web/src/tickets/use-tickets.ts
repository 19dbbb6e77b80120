import { caseSteps, dispatchStep, dispatchView, type DispatchStep } from '@archwright/contracts';
import { useQuery, useSuspenseQuery } from '@tanstack/react-query';
import { read } from '../api/client.js';
import { practiceQuery } from '../api/queries.js';

/** What tickets are wanted of: one job, one case, or the list of a day at a laboratory, perhaps of one work centre. */
export type WantedTickets = Partial<Record<'job' | 'case' | 'lab' | 'on' | 'centre', string | undefined>>;

async function stepsOf({ job, case: caseId, lab, on, centre }: WantedTickets): Promise<DispatchStep[]> {
  if (job !== undefined) return [await read(`/lab/steps/${job}`, dispatchStep)];
  if (caseId !== undefined) return (await read('/lab/steps', caseSteps, { caseId })).items;
  const { steps } = await read('/lab/dispatch', dispatchView, { laboratoryId: lab, on, workCentreId: centre });
  return steps;
}

export function useTickets(wanted: WantedTickets) {
  const practice = useSuspenseQuery(practiceQuery).data;
  const steps = useQuery({ queryKey: ['tickets', wanted], queryFn: () => stepsOf(wanted) });
  return { practice, steps };
}
