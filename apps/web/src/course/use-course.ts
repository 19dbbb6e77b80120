import { caseCourse, type CaseCourse } from '@archwright/contracts';
import { useQuery, useSuspenseQuery } from '@tanstack/react-query';
import { read } from '../api/client.js';
import { practiceQuery } from '../api/queries.js';
import { caseQuery } from '../case-page/use-case.js';

/** The course of a case, with the case itself for its alerts and its history. */
export function useCourse(caseId: string) {
  const practice = useSuspenseQuery(practiceQuery).data;
  const view = useQuery({ ...caseQuery(caseId), placeholderData: undefined });
  const course = useQuery({
    queryKey: ['case', caseId, 'course'],
    queryFn: (): Promise<CaseCourse> => read(`/cases/${caseId}/course`, caseCourse),
    placeholderData: undefined,
  });
  return { practice, view, course };
}
