import { useMutation, useQueryClient } from '@tanstack/react-query';

/** One row of a list, as it was seen, and what was decided about it. */
export interface Decided<Body> {
  id: string;
  version: number;
  body: Body;
}

/**
 * Decides about rows of a list. Whatever comes of it, the lists that show the row are fetched again: after a refusal for
 * being late the person sees what the row has become.
 *
 * @param affects first words of the query keys that show the row
 */
export function useDecision<Body, Answer>(send: (given: Decided<Body>) => Promise<Answer>, affects: readonly string[]) {
  const client = useQueryClient();
  return useMutation({
    mutationFn: send,
    onSettled: () =>
      client.invalidateQueries({ predicate: ({ queryKey: [subject] }) => affects.includes(String(subject)) }),
  });
}
