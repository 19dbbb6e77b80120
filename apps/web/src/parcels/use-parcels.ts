import {
  objectPage,
  objectView,
  parcelPage,
  parcelView,
  type DeclareDisinfection,
  type ObjectDeed,
  type PackParcel,
  type ParcelAction,
  type ReconcileParcel,
  type RegisterObject,
} from '@archwright/contracts';
import { useMutation, useQuery, useQueryClient, useSuspenseQuery } from '@tanstack/react-query';
import { z } from 'zod';
import { post, read } from '../api/client.js';
import { practiceQuery } from '../api/queries.js';
import { useDecision, type Decided } from '../api/use-decision.js';

const UNDER_WAY = ['received', 'handed-over', 'packed'] as const;
const IN_HAND = ['quarantined', 'expected', 'in-use'] as const;
const LIMIT = 100;
const EVERY_MS = 30_000;
const AFFECTED = ['parcels', 'objects', 'case', 'arrival-checks'];

const numberedCases = z.object({ items: z.array(z.object({ id: z.uuid(), number: z.string() })) });

/** The case with exactly this number; null when the person has none. */
async function caseIdOf(number: string): Promise<string | null> {
  const { items } = await read('/cases', numberedCases, { q: number });
  return items.find((each) => each.number === number)?.id ?? null;
}

/** Parcels under way, things in hand, and everything that is done with either. */
export function useParcels() {
  const client = useQueryClient();
  const practice = useSuspenseQuery(practiceQuery).data;
  const parcels = useQuery({
    queryKey: ['parcels'],
    queryFn: async () => {
      const pages = await Promise.all(UNDER_WAY.map((state) => read('/parcels', parcelPage, { state, limit: LIMIT })));
      return pages.flatMap(({ items }) => items);
    },
    refetchInterval: EVERY_MS,
  });
  const objects = useQuery({
    queryKey: ['objects'],
    queryFn: async () => {
      const pages = await Promise.all(IN_HAND.map((state) => read('/objects', objectPage, { state, limit: LIMIT })));
      return pages.flatMap(({ items }) => items);
    },
    refetchInterval: EVERY_MS,
  });
  const again = {
    onSettled: () =>
      client.invalidateQueries({ predicate: ({ queryKey: [subject] }) => AFFECTED.includes(String(subject)) }),
  };
  const pack = useMutation({
    mutationFn: (body: PackParcel) => post('/parcels', parcelView, body),
    ...again,
  });
  const act = useDecision(
    ({ id, version, body }: Decided<ParcelAction>) => post(`/parcels/${id}/actions`, parcelView, body, version),
    AFFECTED,
  );
  const reconcile = useDecision(
    ({ id, version, body }: Decided<ReconcileParcel>) =>
      post(`/parcels/${id}/reconciliation`, parcelView, body, version),
    AFFECTED,
  );
  const register = useMutation({
    mutationFn: async ({ number, ...body }: Omit<RegisterObject, 'caseId'> & { number: string }) => {
      const caseId = await caseIdOf(number);
      return caseId === null ? null : post('/objects', objectView, { ...body, caseId });
    },
    ...again,
  });
  const declare = useMutation({
    mutationFn: ({ id, body }: { id: string; body: DeclareDisinfection }) =>
      post(`/objects/${id}/disinfections`, objectView, body),
    ...again,
  });
  const deed = useDecision(
    ({ id, version, body }: Decided<ObjectDeed>) => post(`/objects/${id}/actions`, objectView, body, version),
    AFFECTED,
  );
  return { practice, parcels, objects, pack, act, reconcile, register, declare, deed };
}
