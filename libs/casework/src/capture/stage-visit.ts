import { Appointment, AppointmentStage } from '@archwright/records';
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
