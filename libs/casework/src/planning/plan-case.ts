import type { OffersView, RequestOffers } from '@archwright/contracts';
import { DomainError } from '@archwright/kernel';
import { isToCome } from '@archwright/protocol';
import { inOrganisation } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { WrongStateError } from '../errors.js';
import { inEnglish, told } from '../tell.js';
import { isFirm } from './bookings.js';
import { stepsBetween } from './fixed-parts.js';
import { labelsOf, withLaterDelivery } from './offer-words.js';
import { loadPlanLabels, toPlanView } from './plan-view.js';
import { loadPlanningBasis, type PlanningBasis, type PlanningOptions } from './planning-basis.js';
import type { FoundPlan } from './search.js';
import type { PlanningMeans } from './searches.js';
import { NO_CHANGE, storePlan } from './stored-plan.js';

/** Nothing of the case is left to be offered: every visit that a plan would place is booked. */
export class EverythingBookedError extends DomainError {
  constructor(number: string) {
    super(
      'casework.everything-booked',
      `Every visit of case ${number} that can be planned is booked. Move or cancel a visit to plan it anew.`,
      { number },
    );
  }
}

/**
 * Different complete plans for what is not firmly booked yet, kept so that one of them can be held; or why there is none,
 * with what would make one possible.
 *
 * The search holds neither a lock nor a connection; an offer that was overtaken meanwhile is refused when it is held.
 */
export async function planCase(
  { db, searches, signal }: PlanningMeans,
  actor: Actor,
  caseId: string,
  asked: RequestOffers,
  now: Date,
): Promise<OffersView> {
  const { organisationId } = actor;
  const load = (everyClinic: boolean): Promise<PlanningBasis> =>
    inOrganisation(db, organisationId, (tx) =>
      loadPlanningBasis(tx, actor, caseId, offerOptions(asked, everyClinic), now),
    );
  const basis = await load(false);
  requirePlannable(basis, asked);
  const { found, refusal } = await searches.offers(basis.request, asked.count, signal);
  if (found.length === 0) {
    const { request: everyClinic } = await load(true);
    const whyNot = await searches.whyNot(basis.request, refusal, { everyClinic, relax: asked.relax ?? {} }, signal);
    return { caseId, offers: [], whyNot };
  }
  const offers = await inOrganisation(db, organisationId, (tx) => keepOffers(tx, actor, basis, found, now));
  return { caseId, offers, whyNot: null };
}

async function keepOffers(
  tx: EntityManager,
  actor: Actor,
  basis: PlanningBasis,
  plans: readonly FoundPlan[],
  now: Date,
): Promise<OffersView['offers']> {
  const offers = withLaterDelivery(plans);
  const labels = labelsOf(offers);
  const planLabels = await loadPlanLabels(
    tx,
    offers.map(({ plan }) => plan),
  );
  const views: OffersView['offers'] = [];
  for (const [index, found] of offers.entries()) {
    const named = labels[index] ?? told('label-another');
    const label = inEnglish(named);
    const { id, planHash } = await storePlan(tx, actor, basis, { kind: 'offer', label, found, change: NO_CHANGE }, now);
    views.push({ id, planHash, label, told: named, plan: toPlanView(found.plan, planLabels) });
  }
  return views;
}

function offerOptions({ notBefore, clinicIds, relax, review }: RequestOffers, everyClinic: boolean): PlanningOptions {
  return {
    notBefore,
    clinicIds,
    relax,
    review,
    keeps: isFirm,
    keepsStep: ({ chain, progress }, bookings) =>
      stepsBetween(
        chain,
        (code) =>
          bookings.some((booking) => booking.stage.code === code && isFirm(booking)) ||
          progress.stages.every((row) => row.code !== code || !isToCome(row.state)),
      ),
    everyClinic,
  };
}

/** A closed case is still called in for its checks. */
function requirePlannable({ treatmentCase, request }: PlanningBasis, { review }: RequestOffers): void {
  const { state, number } = treatmentCase;
  const isRecalled = state === 'closed' && review !== undefined;
  if (state !== 'open' && state !== 'enquiry' && !isRecalled)
    throw new WrongStateError(`Case ${number}`, state, 'open or enquiry');
  const open = request.chain.stages.filter(
    (stage) =>
      stage.chained &&
      request.progress.stages.some((row) => row.code === stage.code && isToCome(row.state)) &&
      !request.fixedStages.some((fixed) => fixed.code === stage.code && fixed.startMs >= request.nowMs),
  );
  if (open.length === 0) throw new EverythingBookedError(number);
}
