import type { StageView } from '@archwright/contracts';
import { Appointment, AppointmentStage, Clinic, Practitioner } from '@archwright/records';
import { In, Not, type EntityManager } from 'typeorm';
import type { StageRecord } from './stage-record.js';

/** The visit that serves a stage; null when none is booked. */
export async function visitOfStage(tx: EntityManager, stageId: string): Promise<Appointment | null> {
  const links = await tx.findBy(AppointmentStage, { stageId });
  return tx.findOne(Appointment, {
    where: { id: In(links.map(({ appointmentId }) => appointmentId)), state: Not(In(['cancelled', 'missed'])) },
    order: { startsAt: 'DESC' },
  });
}

/** Where a stage takes place: where its visit is booked, else the case's own clinic. */
export async function clinicOfStage(
  tx: EntityManager,
  { stage, treatmentCase }: Pick<StageRecord, 'stage' | 'treatmentCase'>,
): Promise<string> {
  return (await visitOfStage(tx, stage.id))?.clinicId ?? treatmentCase.homeClinicId;
}

/** The visit of a stage as the chair sees it, in the zone of its clinic. */
export async function viewVisit(
  tx: EntityManager,
  { stage, treatmentCase }: Pick<StageRecord, 'stage' | 'treatmentCase'>,
): Promise<Pick<StageView, 'zone' | 'visit'>> {
  const visit = await visitOfStage(tx, stage.id);
  const { zone, name: clinicName } = await tx.findOneByOrFail(Clinic, {
    id: visit?.clinicId ?? treatmentCase.homeClinicId,
  });
  if (visit === null) return { zone, visit: null };
  const { id, version, state, startsAt, endsAt } = visit;
  const { name: clinicianName } = await tx.findOneByOrFail(Practitioner, { id: visit.clinicianId });
  const times = { startsAt: startsAt.toISOString(), endsAt: endsAt.toISOString() };
  return { zone, visit: { id, version, state, ...times, clinicName, clinicianName } };
}
