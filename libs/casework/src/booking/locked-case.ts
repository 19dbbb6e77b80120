import { Hold, Patient, TreatmentCase } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { loadChain, type LoadedChain } from '../cases/chain.js';
import { RecordNotFoundError } from '../errors.js';
import { loadBookings, type StageBooking } from '../planning/bookings.js';
import { requireClinic } from '../planning/scope.js';

/** A case as it is while its bookings change; nobody else changes it until the transaction ends. */
export interface LockedCase {
  readonly treatmentCase: TreatmentCase;
  readonly patient: Patient;
  readonly loaded: LoadedChain;
  readonly bookings: readonly StageBooking[];
  /** The case's live hold, if any. */
  readonly hold: Hold | null;
}

/** @throws {RecordNotFoundError} for a case that is unknown or of clinics that are not the actor's */
export async function lockCase(tx: EntityManager, actor: Actor, caseId: string): Promise<LockedCase> {
  const treatmentCase = await tx.findOne(TreatmentCase, { where: { id: caseId }, lock: { mode: 'pessimistic_write' } });
  if (treatmentCase === null) throw new RecordNotFoundError('case', caseId);
  requireClinic(actor, treatmentCase.clinicIds, 'case', caseId);
  const loaded = await loadChain(tx, caseId);
  const patient = await tx.findOneByOrFail(Patient, { id: treatmentCase.patientId });
  const bookings = await loadBookings(tx, loaded.rows.stages);
  const hold = await tx.findOneBy(Hold, { caseId, state: 'active' });
  return { treatmentCase, patient, loaded, bookings, hold };
}
