import { practiceView, sessionView, type PracticeView, type SessionView } from '@archwright/contracts';
import { keepPreviousData, QueryCache, MutationCache, QueryClient, queryOptions } from '@tanstack/react-query';
import { read } from './client.js';
import { hasStatus, ProblemError } from './errors.js';
import { sessionLost } from './session-watch.js';

function watch(error: Error): void {
  if (hasStatus(error, 401)) sessionLost();
}

/** One cache for the whole application. A screen that waits keeps its old picture, dimmed. */
export const queryClient = new QueryClient({
  queryCache: new QueryCache({ onError: watch }),
  mutationCache: new MutationCache({ onError: watch }),
  defaultOptions: {
    queries: {
      staleTime: 5_000,
      placeholderData: keepPreviousData,
      retry: (failures, error) => !(error instanceof ProblemError) && failures < 2,
      networkMode: 'always',
    },
    mutations: { networkMode: 'always' },
  },
});

export const sessionQuery = queryOptions({
  queryKey: ['session'],
  queryFn: (): Promise<SessionView> => read('/sessions/current', sessionView),
  staleTime: Infinity,
});

export const practiceQuery = queryOptions({
  queryKey: ['practice'],
  queryFn: (): Promise<PracticeView> => read('/practice', practiceView),
  staleTime: 60_000,
});
