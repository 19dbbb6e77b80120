import {
  Appointment,
  AppointmentStage,
  Consent,
  PatientIdentity,
  Stage,
  inOrganisation,
  uuidv7,
} from '@archwright/records';
import type { DataSource, EntityManager } from 'typeorm';
import { NOW, aCase, anAppointment, type TestPractice } from './records/records-practice.js';

export interface BookedPatient {
  readonly mail: string;
  readonly caseId: string;
  readonly patientId: string;
  readonly appointmentId: string;
}

/** A patient with a case and one booked visit, on a day of their own so that the chair is free. */
export async function aBookedPatient(
  tx: EntityManager,
  practice: TestPractice,
  { startsAt, consents = ['mail'] }: { startsAt: Date; consents?: ('mail' | 'phone')[] },
): Promise<BookedPatient> {
  const { caseId, patientId } = await aCase(tx, practice);
  const mail = `${patientId}@example.test`;
  await tx.update(PatientIdentity, { patientId }, { mail, phone: '+44 20 7946 0011' });
  for (const channel of consents) {
    await tx.insert(Consent, { id: uuidv7(), patientId, channel, givenAt: NOW, wordingVersion: '1' });
  }
  const endsAt = new Date(startsAt.getTime() + 45 * 60_000);
  const appointmentId = await anAppointment(tx, practice, { patientId, startsAt, endsAt });
  const stageId = uuidv7();
  await tx.insert(Stage, { id: stageId, caseId, code: 'V1', position: 0, arches: ['upper'], state: 'planned' });
  await tx.insert(AppointmentStage, { id: uuidv7(), appointmentId, stageId });
  return { mail, caseId, patientId, appointmentId };
}

/** Moves a visit as a booking does, without its claims: only the messages are looked at here. */
export async function moveVisit(tx: EntityManager, appointmentId: string, startsAt: Date): Promise<void> {
  const endsAt = new Date(startsAt.getTime() + 45 * 60_000);
  await tx.update(Appointment, { id: appointmentId }, { startsAt, endsAt });
}

/** One row that must be there, read as its organisation. */
export async function readOne<Row>(
  db: DataSource,
  { organisationId }: TestPractice,
  sql: string,
  parameters: readonly unknown[],
): Promise<Row> {
  const rows: Row[] = await inOrganisation(db, organisationId, (tx) => tx.query(sql, [...parameters]));
  const [row] = rows;
  if (row === undefined) throw new Error(`No row: ${sql}`);
  return row;
}
