import type { StageView } from '@archwright/contracts';

type Step = 'arrive' | 'start' | 'finish';

export const isOver = ({ state }: Pick<StageView, 'state'>): boolean =>
  state === 'passed' || state === 'repeated' || state === 'dropped';

/** A go that was repeated or dropped is closed for good; one that passed still takes what is found later. */
export const isClosed = ({ state }: Pick<StageView, 'state'>): boolean => state === 'repeated' || state === 'dropped';

/** What may happen to the visit next, the likeliest first. It is finished only once its stage is. */
export function visitSteps(view: Pick<StageView, 'state' | 'visit'>): Step[] {
  switch (view.visit?.state) {
    case 'booked':
      return ['start', 'arrive'];
    case 'arrived':
      return ['start'];
    case 'in-progress':
      return isOver(view) ? ['finish'] : [];
    default:
      return [];
  }
}
