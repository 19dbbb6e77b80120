import type { OffersView } from '@archwright/contracts';
import { DomainError } from '@archwright/kernel';

/** Refusals after which fresh offers help: the time is taken, the run is full, the hold is over, the plan is stale. */
const FRESH_OFFERS_HELP = [
  'records.occupied',
  'records.batch-full',
  'records.hold-not-active',
  'casework.plan-conflict',
];

/** What was offered can't be had any more; what can be had now comes with it. */
export class OfferTakenError extends DomainError {
  constructor(reason: string, details: Readonly<Record<string, unknown>>, offers: OffersView) {
    super('casework.offer-conflict', `${reason} Nothing was booked. Fresh offers are in "offers".`, {
      ...details,
      offers,
    });
  }
}

export function isOfferGone(error: unknown): error is DomainError {
  return error instanceof DomainError && FRESH_OFFERS_HELP.includes(error.code);
}
