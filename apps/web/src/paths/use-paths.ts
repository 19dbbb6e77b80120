import { pathList, pathView, setupView, type PathList, type PathView, type SetupView } from '@archwright/contracts';
import { treatmentPath, type TreatmentPath } from '@archwright/protocol';
import { useMutation, useQuery, useQueryClient, useSuspenseQuery } from '@tanstack/react-query';
import { put, read } from '../api/client.js';
import { practiceQuery } from '../api/queries.js';

/** A version whose document has been read as a path. */
export type ReadPathView = Omit<PathView, 'document'> & { document: TreatmentPath };

const withPath = (view: PathView): ReadPathView => ({ ...view, document: treatmentPath.parse(view.document) });

export function usePaths() {
  const practice = useSuspenseQuery(practiceQuery).data;
  const paths = useQuery({
    queryKey: ['treatment-paths'],
    queryFn: (): Promise<PathList> => read('/treatment-paths', pathList),
  });
  return { practice, paths };
}

/** One version, with another one to compare it with. */
export function usePath(versionId: string, otherId: string | undefined) {
  const client = useQueryClient();
  const list = usePaths();
  const readPath = (id: string) => ({
    queryKey: ['treatment-paths', id],
    queryFn: async (): Promise<ReadPathView> => withPath(await read(`/treatment-paths/${id}`, pathView)),
    enabled: id !== '',
    placeholderData: undefined,
  });
  const path = useQuery(readPath(versionId));
  const other = useQuery(readPath(otherId ?? ''));
  const setup = useQuery({ queryKey: ['setup'], queryFn: (): Promise<SetupView> => read('/setup', setupView) });
  const onSuccess = () => client.invalidateQueries();
  const publish = useMutation({
    mutationFn: ({ document, basedOn }: { document: TreatmentPath; basedOn: number }) =>
      put(`/treatment-paths/${document.code}`, pathView, { document }, basedOn),
    onSuccess,
  });
  const withdraw = useMutation({
    mutationFn: (isWithdrawn: boolean) => put(`/treatment-paths/${versionId}/withdrawal`, pathView, { isWithdrawn }),
    onSuccess,
  });
  return { ...list, path, other, setup, publish, withdraw };
}
