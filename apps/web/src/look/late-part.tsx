import { queryOptions, useQuery } from '@tanstack/react-query';
import type { ComponentType } from 'react';
import { OfflineError } from '../api/errors.js';
import { Refusal } from './notice.js';
import { FirstWait } from './screen.js';

/** A script as a query: fetched once, asked for again by whoever tries again. */
export const scriptQuery = <Script,>(name: string, load: () => Promise<Script>) =>
  queryOptions({
    queryKey: ['script', name],
    queryFn: async (): Promise<Script> => {
      try {
        return await load();
      } catch {
        throw new OfflineError(`The script "${name}" cannot be fetched.`);
      }
    },
    staleTime: Infinity,
    gcTime: Infinity,
    structuralSharing: false,
  });

/**
 * A part of a screen whose script is fetched when the part is first shown. Without a network the part says so, and the
 * screen around it stays as it is.
 *
 * @param what names the part in a sentence, while it is fetched
 */
export function latePart<Props extends object>(what: string, load: () => Promise<ComponentType<Props>>) {
  const script = scriptQuery(what, load);
  return function LatePart(props: Props) {
    const { data: Part, error, refetch } = useQuery(script);
    if (Part) return <Part {...props} />;
    return error ? <Refusal error={error} onRetry={() => void refetch()} /> : <FirstWait what={what} />;
  };
}
