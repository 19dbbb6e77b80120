import { practiceRulesView, type PracticeRules, type PracticeRulesView } from '@archwright/contracts';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { put, read } from '../api/client.js';

export function useRules() {
  const client = useQueryClient();
  const known = useQuery({
    queryKey: ['practice-rules'],
    queryFn: (): Promise<PracticeRulesView> => read('/practice-rules', practiceRulesView),
  });
  const save = useMutation({
    mutationFn: ({ body, version }: { body: PracticeRules; version: number }) =>
      put('/practice-rules', practiceRulesView, body, version),
    onSettled: () => client.invalidateQueries({ queryKey: ['practice-rules'] }),
  });
  return { known, save };
}
