import type { FreedTimeTaker } from '@archwright/contracts';

type Gain = Pick<FreedTimeTaker, 'visitDaysEarlier' | 'deliveryDaysEarlier' | 'movedVisits'>;

const counted = (count: number, one: string, many: string): string => `${String(count)} ${count === 1 ? one : many}`;

/** What is gained, then what it costs. */
export function gainSentence(title: string, { visitDaysEarlier, deliveryDaysEarlier, movedVisits }: Gain): string {
  const days = (count: number) =>
    count === 0 ? 'earlier on the same day' : `${counted(count, 'day', 'days')} earlier`;
  const placed = deliveryDaysEarlier > 0 ? `Placement ${days(deliveryDaysEarlier)}; ` : '';
  const visit = `${placed === '' ? title : title.charAt(0).toLowerCase() + title.slice(1)} ${days(visitDaysEarlier)}`;
  const cost = movedVisits === 1 ? 'No other visit moves.' : `${String(movedVisits)} visits of the case move in all.`;
  return `${placed}${visit}. ${cost}`;
}
