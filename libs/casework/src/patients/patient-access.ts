import { Patient } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { RecordNotFoundError } from '../errors.js';

/**
 * Who may see a patient: someone at a clinic that the patient accepts or is treated at; everyone who may see patients
 * when no clinic is named yet. `$1` are the actor's clinics, null for who sees all of them.
 */
export const PATIENT_IN_SCOPE = `($1::uuid[] IS NULL OR cardinality(p.accepted_clinic_ids) = 0
  OR p.accepted_clinic_ids && $1::uuid[]
  OR EXISTS (SELECT FROM treatment_case c WHERE c.patient_id = p.id AND c.clinic_ids && $1::uuid[]))`;

/** Clinics that bound what the actor sees; null: none does. */
export function clinicScope(actor: Actor): readonly string[] | null {
  return actor.role === 'administrator' || actor.role === 'service' ? null : actor.clinicIds;
}

/**
 * The patient's row, locked against other changes.
 *
 * @throws {RecordNotFoundError} for a patient unknown here or outside the actor's clinics
 */
export async function lockPatient(tx: EntityManager, actor: Actor, patientId: string): Promise<Patient> {
  await requirePatient(tx, actor, patientId);
  return tx.findOneOrFail(Patient, { where: { id: patientId }, lock: { mode: 'pessimistic_write' } });
}

/** @throws {RecordNotFoundError} for a patient unknown here or outside the actor's clinics */
export async function requirePatient(tx: EntityManager, actor: Actor, patientId: string): Promise<void> {
  const found: unknown[] = await tx.query(`SELECT FROM patient p WHERE p.id = $2 AND ${PATIENT_IN_SCOPE}`, [
    clinicScope(actor),
    patientId,
  ]);
  if (found.length === 0) throw new RecordNotFoundError('patient', patientId);
}
