import { offersConflict, type CasePlan, type OffersView } from '@archwright/contracts';
import { ProblemError } from '../api/errors.js';
import { dateAndTime, longDate, zoneNote } from '../time/wording.js';
import { offerWords } from '../words/case.js';

/** The zone in which an offer is drawn: that of its first visit's clinic. */
export const zoneOfPlan = (plan: CasePlan, otherwise: string): string => plan.visits[0]?.zone ?? otherwise;

export const deliveryWords = (plan: CasePlan, today: string): string =>
  plan.deliveryOn ? longDate(plan.deliveryOn, today) : offerWords.noDelivery;

export interface VisitLine {
  key: string;
  when: string;
  title: string;
  where: string;
  againstWish: boolean;
}

/** The visits of a plan as they are read to somebody on the phone: when, what for, where and with whom. */
export const visitLines = (plan: CasePlan, clock: { today: string; viewer: string }): VisitLine[] =>
  plan.visits.map((visit) => ({
    key: `${visit.startsAt} ${visit.title}`,
    when: [dateAndTime(visit.startsAt, visit.zone, clock.today), zoneNote(visit.startsAt, visit.zone, clock.viewer)]
      .filter(Boolean)
      .join(' '),
    title: visit.title,
    where: offerWords.where(visit.clinicName, visit.clinicianName),
    againstWish: !visit.asWished,
  }));

/** Fresh offers that came with a conflict, or null when the refusal was of another kind. */
export function offersOfConflict(error: unknown): OffersView | null {
  if (!(error instanceof ProblemError) || error.status !== 409) return null;
  return offersConflict.safeParse(error.problem).data?.offers ?? null;
}

/** How many of the next visits can be made firm while the rest stays provisional: all but the last, at least none. */
export const firmChoices = (plan: CasePlan): number[] => plan.visits.slice(0, -1).map((_, index) => index + 1);
