import {
  importedCalendar,
  importedPatientTable,
  setupView,
  type ImportCalendar,
  type ImportPatientTable,
  type SetupView,
} from '@archwright/contracts';
import { useMutation, useQuery, useQueryClient, useSuspenseQuery } from '@tanstack/react-query';
import { post, read } from '../api/client.js';
import { practiceQuery } from '../api/queries.js';

/** Files as they are taken in, first for a trial; whatever is shown elsewhere may have changed afterwards. */
export function useImports() {
  const client = useQueryClient();
  const practice = useSuspenseQuery(practiceQuery).data;
  const setup = useQuery({ queryKey: ['setup'], queryFn: (): Promise<SetupView> => read('/setup', setupView) });
  const onSuccess = () => client.invalidateQueries();
  const patients = useMutation({
    mutationFn: (body: ImportPatientTable) => post('/patient-imports', importedPatientTable, body),
    onSuccess,
  });
  const calendar = useMutation({
    mutationFn: ({ resourceId, body }: { resourceId: string; body: ImportCalendar }) =>
      post(`/resources/${resourceId}/calendar`, importedCalendar, body),
    onSuccess,
  });
  return { practice, setup, patients, calendar };
}
