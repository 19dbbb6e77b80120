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

/** What is sent, once its file has been read. Reading is part of the sending: choosing another file gives up both. */
type Coming<Body> = () => Promise<Body>;

/** Files as they are taken in, first for a trial; whatever is shown elsewhere may have changed afterwards. */
export function useImports() {
  const client = useQueryClient();
  const practice = useSuspenseQuery(practiceQuery).data;
  const setup = useQuery({ queryKey: ['setup'], queryFn: (): Promise<SetupView> => read('/setup', setupView) });
  const onSuccess = () => client.invalidateQueries();
  const patients = useMutation({
    mutationFn: async (coming: Coming<ImportPatientTable>) => {
      const sent = await coming();
      return { sent, answer: await post('/patient-imports', importedPatientTable, sent) };
    },
    onSuccess,
  });
  const calendar = useMutation({
    mutationFn: async (coming: Coming<{ resourceId: string; body: ImportCalendar }>) => {
      const sent = await coming();
      const answer = await post(`/resources/${sent.resourceId}/calendar`, importedCalendar, sent.body);
      return { sent, answer };
    },
    onSuccess,
  });
  return { practice, setup, patients, calendar };
}
