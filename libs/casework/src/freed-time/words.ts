import type { FreedTimeTaker, Told } from '@archwright/contracts';
import { told } from '../tell.js';

type Gain = Pick<FreedTimeTaker, 'visitDaysEarlier' | 'deliveryDaysEarlier' | 'movedVisits'>;

/** What is gained, then what it costs. */
export const gainTold = (title: string, { visitDaysEarlier, deliveryDaysEarlier, movedVisits }: Gain): Told =>
  told('freed-gain', {
    title: { title },
    placed: Math.max(0, deliveryDaysEarlier),
    days: visitDaysEarlier,
    moved: movedVisits,
  });
