import type { Ripple } from '@archwright/contracts';
import { Consent, PatientIdentity, type LabStep } from '@archwright/records';
import { IsNull, type EntityManager } from 'typeorm';
import type { StageBooking } from '../planning/bookings.js';
import { loadPlanLabels, toInstant, toPlanView, type PlanLabels } from '../planning/plan-view.js';
import { isMovable, type ReplanBasis } from '../planning/replan-basis.js';
import type { StoredPlan } from '../planning/stored-plan.js';
import { isReachedByMail } from '../reminders/visits.js';

/** A stored change as people see it before it happens: what moves from when to when, who has to be called, what stays. */
export async function rippleView(
  tx: EntityManager,
  basis: ReplanBasis,
  stored: StoredPlan,
  now: Date,
): Promise<Ripple> {
  const labels = await loadPlanLabels(tx, [stored.plan]);
  const identity = await tx.findOneBy(PatientIdentity, { patientId: basis.patient.id });
  const patientName = identity === null ? '' : `${identity.givenName} ${identity.familyName}`;
  const visits = [...movedVisits(basis, stored, labels, now), ...droppedVisits(basis, stored)].map((visit) => ({
    ...visit,
    patientName,
    caseNumber: basis.treatmentCase.number,
  }));
  const labSteps = [...movedSteps(basis, stored), ...droppedSteps(basis, stored)];
  const untouchedVisits = stored.plan.visits.filter(({ isKept }) => isKept).length;
  return {
    id: stored.id,
    planHash: stored.planHash,
    caseId: stored.caseId,
    visits,
    labSteps,
    calls: visits.length === 0 ? [] : [await callOf(tx, basis.patient.id, { identity, patientName })],
    untouchedVisits,
    plan: toPlanView(stored.plan, labels),
  };
}

interface ToBeTold {
  readonly identity: PatientIdentity | null;
  readonly patientName: string;
}

/** How the patient hears of the change: by mail where that was agreed to, else somebody calls. */
async function callOf(
  tx: EntityManager,
  patientId: string,
  { identity, patientName }: ToBeTold,
): Promise<Ripple['calls'][number]> {
  const consents = await tx.findBy(Consent, { patientId, withdrawnAt: IsNull() });
  const byMail = isReachedByMail({
    mail: identity?.mail ?? null,
    consents: consents.map(({ channel }) => channel),
  });
  return { patientId, patientName, phone: identity?.phone ?? null, byMail };
}

type VisitChange = Omit<Ripple['visits'][number], 'patientName' | 'caseNumber'>;

function bookingOf({ bookings }: ReplanBasis, stage: string, now: Date): StageBooking | undefined {
  return bookings.find((booking) => booking.stage.code === stage && isMovable(booking, now));
}

function movedVisits(basis: ReplanBasis, { plan }: StoredPlan, labels: PlanLabels, now: Date): VisitChange[] {
  return plan.visits
    .filter(({ isKept }) => !isKept)
    .map((visit) => {
      const appointment = bookingOf(basis, visit.stage, now)?.appointment;
      const clinic = labels.clinics.get(visit.clinicId);
      return {
        stages: [visit.stage],
        title: visit.title,
        appointmentId: appointment?.id ?? null,
        before: appointment?.startsAt.toISOString() ?? null,
        after: toInstant(visit.startMs),
        clinicName: clinic?.name ?? '',
        zone: clinic?.zone ?? 'UTC',
      };
    });
}

function droppedVisits({ bookings, loaded, request }: ReplanBasis, { change }: StoredPlan): VisitChange[] {
  return bookings
    .filter(({ appointment }) => change.cancelledAppointmentIds.includes(appointment.id))
    .map(({ stage, appointment }) => {
      const clinic = request.practice.clinics.find(({ id }) => id === appointment.clinicId);
      return {
        stages: [stage.code],
        title: loaded.chain.stages.find(({ code }) => code === stage.code)?.title ?? stage.code,
        appointmentId: appointment.id,
        before: appointment.startsAt.toISOString(),
        after: null,
        clinicName: clinic?.name ?? '',
        zone: clinic?.zone ?? 'UTC',
      };
    });
}

function movedSteps({ loaded }: ReplanBasis, { plan }: StoredPlan): Ripple['labSteps'] {
  return plan.labSteps
    .filter(({ isKept }) => !isKept)
    .map(({ code, round, title, arches, startMs }) => {
      const row = loaded.rows.steps.find((step) => step.code === code && step.round === round);
      return {
        code,
        title,
        arches: [...arches],
        before: row?.startsAt?.toISOString() ?? null,
        after: toInstant(startMs),
      };
    });
}

function droppedSteps({ loaded }: ReplanBasis, { change }: StoredPlan): Ripple['labSteps'] {
  const isDropped = ({ state, beforeStage, startsAt }: LabStep) =>
    (state === 'planned' || state === 'ready') && startsAt !== null && change.droppedStages.includes(beforeStage);
  return loaded.rows.steps.filter(isDropped).map(({ code, arches, startsAt }) => ({
    code,
    title: loaded.chain.steps.find((step) => step.code === code)?.title ?? code,
    arches,
    before: startsAt?.toISOString() ?? null,
    after: null,
  }));
}
