import { materialLotPage } from '@archwright/contracts';
import { useQuery, useSuspenseQuery } from '@tanstack/react-query';
import { read } from '../api/client.js';
import { practiceQuery } from '../api/queries.js';

const LIMIT = 100;

/** Where a lot went; nothing is asked before there is one to ask for. */
export function useLots(lot: string, material: string) {
  const practice = useSuspenseQuery(practiceQuery).data;
  const found = useQuery({
    queryKey: ['material-lots', lot, material],
    queryFn: () => read('/material-lots', materialLotPage, { lot, material, limit: LIMIT }),
    enabled: lot !== '',
  });
  return { practice, found };
}
