import type { SessionView } from '@archwright/contracts';
import { useSuspenseQuery } from '@tanstack/react-query';
import { sessionQuery } from '../api/queries.js';

/** Who is signed in. Only for screens behind the sign-in, where the router has already fetched it. */
export const useSession = (): SessionView => useSuspenseQuery(sessionQuery).data;
