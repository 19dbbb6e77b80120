import { offersConflict, type CasePlan, type OffersView } from '@archwright/contracts';
import { ProblemError } from '../api/errors.js';
import { longDate } from '../time/wording.js';
import { offerWords } from '../words/case.js';

/** The zone in which an offer is drawn: that of its first visit's clinic. */
export const zoneOfPlan = (plan: CasePlan, otherwise: string): string => plan.visits[0]?.zone ?? otherwise;

export const deliveryWords = (plan: CasePlan, today: string): string =>
  plan.deliveryOn ? longDate(plan.deliveryOn, today) : offerWords.noDelivery;

/** Fresh offers that came with a conflict, or null when the refusal was of another kind. */
export function offersOfConflict(error: unknown): OffersView | null {
  if (!(error instanceof ProblemError) || error.status !== 409) return null;
  return offersConflict.safeParse(error.problem).data?.offers ?? null;
}

/** How many of the next visits can be made firm while the rest stays provisional: all but the last, at least none. */
export const firmChoices = (plan: CasePlan): number[] => plan.visits.slice(0, -1).map((_, index) => index + 1);
