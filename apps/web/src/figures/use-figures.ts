import { figuresView, type FiguresView } from '@archwright/contracts';
import { useQuery } from '@tanstack/react-query';
import { read } from '../api/client.js';

/** How the practice does. */
export const useFigures = () =>
  useQuery({
    queryKey: ['figures'],
    queryFn: (): Promise<FiguresView> => read('/figures', figuresView),
    // Reckoned over everything that happened: one change more is not worth doing it again.
    meta: { isLive: false },
  });
