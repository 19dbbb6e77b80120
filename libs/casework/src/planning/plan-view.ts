import type { CasePlan as CasePlanView } from '@archwright/contracts';
import type { CasePlan, CasePlanLabStep, CasePlanVisit } from '@archwright/protocol';
import { BenchPlace, Chair, Clinic, Laboratory, Practitioner } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import { tell, told } from '../tell.js';
import { lossTold, reasonTold } from './offer-words.js';

/** Names behind the ids of plans. */
export interface PlanLabels {
  readonly clinics: ReadonlyMap<string, Clinic>;
  readonly clinicians: ReadonlyMap<string, string>;
  readonly chairs: ReadonlyMap<string, string>;
  readonly laboratories: ReadonlyMap<string, string>;
  readonly places: ReadonlyMap<string, string>;
}

export async function loadPlanLabels(tx: EntityManager, plans: readonly CasePlan[]): Promise<PlanLabels> {
  const visits = plans.flatMap((plan) => plan.visits);
  const steps = plans.flatMap((plan) => plan.labSteps);
  const clinics = await tx.findBy(Clinic, { id: In(visits.map(({ clinicId }) => clinicId)) });
  const clinicians = await tx.findBy(Practitioner, { id: In(visits.map(({ clinicianId }) => clinicianId)) });
  const chairs = await tx.findBy(Chair, { id: In(visits.map(({ chairId }) => chairId).filter((id) => id !== '')) });
  const laboratories = await tx.findBy(Laboratory, { id: In(steps.map(({ laboratoryId }) => laboratoryId)) });
  const places = await tx.findBy(BenchPlace, { id: In(steps.flatMap(({ placeId }) => placeId ?? [])) });
  return {
    clinics: new Map(clinics.map((each) => [each.id, each])),
    clinicians: new Map(clinicians.map(({ id, name }) => [id, name])),
    chairs: new Map(chairs.map(({ id, label }) => [id, label])),
    laboratories: new Map(laboratories.map(({ id, name }) => [id, name])),
    places: new Map(places.map(({ id, label }) => [id, label])),
  };
}

/** A plan as people see it. */
export function toPlanView(plan: CasePlan, labels: PlanLabels): CasePlanView {
  return {
    visits: plan.visits.map((visit) => toVisitView(visit, labels)),
    labSteps: plan.labSteps.map((step) => toStepView(step, labels)),
    transports: plan.transports.map(({ direction, departsAtMs, arrivesAtMs }) => ({
      direction,
      departsAt: toInstant(departsAtMs),
      arrivesAt: toInstant(arrivesAtMs),
    })),
    deliveryOn: plan.deliveryOn,
    reasons: plan.reasons.map((reason) => tell(reasonTold(reason, plan))),
    givesUp: plan.givesUp.map((loss) => tell(lossTold(loss))),
  };
}

function toVisitView(visit: CasePlanVisit, labels: PlanLabels): CasePlanView['visits'][number] {
  const { clinicId, clinicianId, chairId, title, isDelivery, isReview, asWished } = visit;
  const clinic = labels.clinics.get(clinicId);
  return {
    stages: [visit.stage],
    title,
    clinicId,
    clinicName: clinic?.name ?? '',
    zone: clinic?.zone ?? 'UTC',
    clinicianId,
    clinicianName: labels.clinicians.get(clinicianId) ?? '',
    chairId: chairId === '' ? null : chairId,
    chairLabel: labels.chairs.get(chairId) ?? '',
    homeTravelMinutes: visit.homeTravelMinutes,
    startsAt: toInstant(visit.startMs),
    endsAt: toInstant(visit.endMs),
    isDelivery,
    isReview,
    asWished,
    againstWishes: visit.againstWishes.map((wish) => tell(told(wish === 'weekday' ? 'wish-weekday' : 'wish-hours'))),
  };
}

function toStepView(step: CasePlanLabStep, labels: PlanLabels): CasePlanView['labSteps'][number] {
  const { code, title, afterStage, beforeStage, laboratoryId, workCentre, placeId } = step;
  return {
    code,
    title,
    arches: [...step.arches],
    afterStage,
    beforeStage,
    laboratoryId,
    laboratoryName: labels.laboratories.get(laboratoryId) ?? '',
    workCentre,
    placeId,
    placeLabel: placeId === null ? '' : (labels.places.get(placeId) ?? ''),
    startsAt: toInstant(step.startMs),
    endsAt: toInstant(step.endMs),
  };
}

export const toInstant = (ms: number): string => new Date(ms).toISOString();
