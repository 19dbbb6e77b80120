import type { AlternativesView } from '@archwright/contracts';
import { toLocal } from '@archwright/calendar';
import { Appointment, AppointmentStage, Clinic, Practitioner, Stage, readInOrganisation } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { RecordNotFoundError } from '../errors.js';
import { loadReplanBasis } from '../planning/replan-basis.js';
import type { PlanningMeans } from '../planning/searches.js';

/** Starts looked at, and starts shown: people choose among hours, not among every five minutes. Project defaults. */
const MOST_SEARCHED = 1500;
const MOST_SHOWN = 60;

/** Other starts of one visit that leave every other visit of the case where it is, at the half hours. */
export async function alternativesOf(
  { db, searches }: PlanningMeans,
  actor: Actor,
  appointmentId: string,
  now: Date,
): Promise<AlternativesView> {
  const { organisationId } = actor;
  const { appointment, stage, search, zone } = await readInOrganisation(db, organisationId, (tx) =>
    loadVisit(tx, actor, appointmentId, now),
  );
  const starts = (await searches.startsKeepingRest(search, stage.code, MOST_SEARCHED))
    .filter(({ startMs, clinicianId }) => {
      const isPresent = startMs === appointment.startsAt.getTime() && clinicianId === appointment.clinicianId;
      return !isPresent && isHalfHour(startMs, zone);
    })
    .slice(0, MOST_SHOWN);
  const people = await readInOrganisation(db, organisationId, (tx) =>
    tx.findBy(Practitioner, { id: In(starts.map(({ clinicianId }) => clinicianId)) }),
  );
  const names = new Map(people.map(({ id, name }) => [id, name]));
  return {
    appointmentId,
    zone,
    starts: starts.map(({ startMs, clinicianId }) => ({
      startsAt: new Date(startMs).toISOString(),
      clinicianId,
      clinicianName: names.get(clinicianId) ?? '',
    })),
  };
}

async function loadVisit(tx: EntityManager, actor: Actor, appointmentId: string, now: Date) {
  const appointment = await tx.findOneBy(Appointment, { id: appointmentId });
  if (appointment === null) throw new RecordNotFoundError('appointment', appointmentId);
  const links = await tx.findBy(AppointmentStage, { appointmentId });
  const stage = await tx.findOneBy(Stage, { id: In(links.map(({ stageId }) => stageId)) });
  if (stage === null) throw new RecordNotFoundError('stage of appointment', appointmentId);
  const { search } = await loadReplanBasis(tx, actor, stage.caseId, stage.code, now);
  const { zone } = await tx.findOneByOrFail(Clinic, { id: appointment.clinicId });
  return { appointment, stage, search, zone };
}

const isHalfHour = (ms: number, zone: string): boolean => ['00', '30'].includes(toLocal(ms, zone).slice(14, 16));
