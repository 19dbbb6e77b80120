import type { OffersView, RequestOffers } from '@archwright/contracts';
import { DomainError } from '@archwright/kernel';
import { isToCome } from '@archwright/protocol';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { WrongStateError } from '../errors.js';
import { isFirm } from './bookings.js';
import { stepsBetween } from './fixed-parts.js';
import { labelsOf, withLaterDelivery } from './offer-words.js';
import { loadPlanLabels, toPlanView } from './plan-view.js';
import { loadPlanningBasis, type PlanningBasis, type PlanningOptions } from './planning-basis.js';
import { findOffers, type FoundPlan } from './search.js';
import { NO_CHANGE, storePlan } from './stored-plan.js';
import { explainWhyNot } from './why-not.js';

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
 */
export async function planCase(
  tx: EntityManager,
  actor: Actor,
  caseId: string,
  asked: RequestOffers,
  now: Date,
): Promise<OffersView> {
  const basis = await loadPlanningBasis(tx, actor, caseId, offerOptions(asked, false), now);
  requirePlannable(basis);
  const { found: plans, refusal } = searched(basis, asked.count);
  const offers = withLaterDelivery(plans);
  if (offers.length === 0) {
    const whyNot = await whyNotOf(tx, actor, { basis, refusal, asked }, now);
    return { caseId, offers: [], whyNot };
  }
  const labels = labelsOf(offers);
  const planLabels = await loadPlanLabels(
    tx,
    offers.map(({ plan }) => plan),
  );
  const views: OffersView['offers'] = [];
  for (const [index, found] of offers.entries()) {
    const label = labels[index] ?? '';
    const { id, planHash } = await storePlan(tx, actor, basis, { kind: 'offer', label, found, change: NO_CHANGE }, now);
    views.push({ id, planHash, label, plan: toPlanView(found.plan, planLabels) });
  }
  return { caseId, offers: views, whyNot: null };
}

function offerOptions({ notBefore, clinicIds, relax }: RequestOffers, everyClinic: boolean): PlanningOptions {
  return {
    notBefore,
    clinicIds,
    relax,
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

function requirePlannable({ treatmentCase, request }: PlanningBasis): void {
  const { state, number } = treatmentCase;
  if (state !== 'open' && state !== 'enquiry') throw new WrongStateError(`Case ${number}`, state, 'open or enquiry');
  const open = request.chain.stages.filter(
    (stage) =>
      stage.chained &&
      request.progress.stages.some((row) => row.code === stage.code && isToCome(row.state)) &&
      !request.fixedStages.some((fixed) => fixed.code === stage.code && fixed.startMs >= request.nowMs),
  );
  if (open.length === 0) throw new EverythingBookedError(number);
}

interface Searched {
  readonly found: readonly FoundPlan[];
  /** What proves that there can never be a plan. */
  readonly refusal: DomainError | null;
}

function searched({ request }: PlanningBasis, count: number): Searched {
  try {
    return { found: findOffers(request, count), refusal: null };
  } catch (error) {
    if (error instanceof DomainError) return { found: [], refusal: error };
    throw error;
  }
}

interface Unplannable extends Pick<Searched, 'refusal'> {
  readonly basis: PlanningBasis;
  readonly asked: RequestOffers;
}

async function whyNotOf(
  tx: EntityManager,
  actor: Actor,
  { basis, refusal, asked }: Unplannable,
  now: Date,
): Promise<OffersView['whyNot']> {
  const wider = await loadPlanningBasis(tx, actor, basis.treatmentCase.id, offerOptions(asked, true), now);
  return explainWhyNot(basis.request, refusal, { everyClinic: wider.request, relax: asked.relax ?? {} });
}
