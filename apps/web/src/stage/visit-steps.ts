import type { StageView } from '@archwright/contracts';
import { milestoneKindsOf } from '@archwright/measures';

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

/** Sections of the page of a visit, by the id of what a link leads to. */
export type Section =
  'checklist' | 'capture' | 'vertical' | 'teeth' | 'photographs' | 'verdicts' | 'gates' | 'prescription' | 'complete';

export const isBegun = ({ state }: Pick<StageView, 'state'>): boolean => state === 'in-progress' || state === 'passed';

export const mayComplete = ({ state }: Pick<StageView, 'state'>): boolean => state === 'in-progress';

/** The sections that the page of this visit shows, in its order. */
export function sectionsOf(view: StageView): Section[] {
  const judges = judgesJawRelation(view);
  const shown: Record<Section, boolean> = {
    checklist: view.checklist.length > 0,
    capture: true,
    vertical: judges,
    teeth: judges,
    photographs: true,
    verdicts: true,
    gates: view.gates.length > 0,
    prescription: view.prescription !== null && isBegun(view),
    complete: mayComplete(view),
  };
  return (Object.keys(shown) as Section[]).filter((section) => shown[section]);
}

/** Tracings and other records of the centric relation belong to visits at which the jaw relation is judged. */
export const judgesJawRelation = (view: StageView): boolean =>
  view.tracings.length + view.otherCentricRelation.length > 0 ||
  view.milestones
    .flatMap((milestone) => milestoneKindsOf(milestone))
    .some((kind) => kind === 'jaw-relation' || kind === 'trial' || kind === 'placement');
