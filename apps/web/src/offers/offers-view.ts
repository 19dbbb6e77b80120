import {
  offer,
  offersView,
  type CasePlan,
  type OffersView,
  type RequestOffers,
  requestOffers,
} from '@archwright/contracts';
import { z } from 'zod';
import { ProblemError } from '../api/errors.js';
import { longDate } from '../time/wording.js';
import { offerWords } from '../words/case.js';

/** The zone in which an offer is drawn: that of its first visit's clinic. */
export const zoneOfPlan = (plan: CasePlan, otherwise: string): string => plan.visits[0]?.zone ?? otherwise;

export const deliveryWords = (plan: CasePlan, today: string): string =>
  plan.deliveryOn ? longDate(plan.deliveryOn, today) : offerWords.noDelivery;

const freshOffers = z.union([offersView, z.array(offer)]);

/** Fresh offers that came with a conflict, or null when the refusal was of another kind. */
export function offersOfConflict(error: unknown, caseId: string): OffersView | null {
  if (!(error instanceof ProblemError) || error.status !== 409) return null;
  const parsed = freshOffers.safeParse(error.problem['offers']);
  if (!parsed.success) return null;
  return Array.isArray(parsed.data) ? { caseId, offers: parsed.data, whyNot: null } : parsed.data;
}

/**
 * The request with a proposed relaxation applied on top of what it already held.
 *
 * @param apply as it came under `whyNot.relaxations[].apply`: a whole request, or only its `relax` part
 */
export function relaxed(request: RequestOffers, apply: Record<string, unknown>): RequestOffers {
  const whole = requestOffers.safeParse(apply);
  if (whole.success && whole.data.relax) {
    return { ...request, ...whole.data, count: request.count, relax: { ...request.relax, ...whole.data.relax } };
  }
  const part = requestOffers.parse({ relax: apply });
  return { ...request, relax: { ...request.relax, ...part.relax } };
}

/** How many of the next visits can be made firm while the rest stays provisional: all but the last, at least none. */
export const firmChoices = (plan: CasePlan): number[] => plan.visits.slice(0, -1).map((_, index) => index + 1);
