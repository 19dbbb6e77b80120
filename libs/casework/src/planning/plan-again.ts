import type { OffersView, RequestOffers } from '@archwright/contracts';
import { Recall, inOrganisation } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { planCase } from './plan-case.js';
import type { PlanningMeans } from './searches.js';
import { loadPlan } from './stored-plan.js';

/** Offers in the place of one whose time is gone: for the same visits, those of the chain or a check that is due. */
export async function planAgain(
  means: PlanningMeans,
  actor: Actor,
  { offerId, count }: { readonly offerId: string; readonly count: number },
  now: Date,
): Promise<OffersView> {
  const { caseId, review } = await inOrganisation(means.db, actor.organisationId, (tx) => askedFor(tx, offerId));
  return planCase(means, actor, caseId, { count, review }, now);
}

async function askedFor(
  tx: EntityManager,
  offerId: string,
): Promise<{ caseId: string } & Pick<RequestOffers, 'review'>> {
  const { caseId, plan } = await loadPlan(tx, offerId, ['offer']);
  const placed = plan.visits.filter(({ isKept }) => !isKept).map(({ stage }) => stage);
  const due = await tx.findOneBy(Recall, { caseId, kind: In(placed), state: 'due' });
  return { caseId, review: due?.kind };
}
