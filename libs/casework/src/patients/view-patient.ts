import type { PatientView } from '@archwright/contracts';
import { Consent, Patient, PatientIdentity, TreatmentCase } from '@archwright/records';
import { In, IsNull, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { caseTitles } from '../cases/case-titles.js';
import { RecordNotFoundError } from '../errors.js';
import { clinicScope, requirePatient } from './patient-access.js';
import { patientViewOf, type PatientRows } from './patient-rows.js';

/** @throws {RecordNotFoundError} for a patient unknown here, outside the actor's clinics, or whose identity was erased */
export async function viewPatient(tx: EntityManager, actor: Actor, patientId: string): Promise<PatientView> {
  await requirePatient(tx, actor, patientId);
  const [rows] = await loadPatients(tx, [patientId]);
  if (rows === undefined) throw new RecordNotFoundError('patient', patientId);
  const cases = await casesInScope(tx, actor, patientId);
  const titles = await caseTitles(
    tx,
    cases.map(({ id }) => id),
  );
  return {
    ...patientViewOf(rows),
    cases: cases.map(({ id, number, state }) => ({ id, number, state, title: titles.get(id) ?? '' })),
  };
}

/** Patients with identity and live consents, in the order of the ids. */
export async function loadPatients(tx: EntityManager, ids: readonly string[]): Promise<PatientRows[]> {
  const patients = new Map((await tx.findBy(Patient, { id: In([...ids]) })).map((each) => [each.id, each]));
  const identities = await tx.findBy(PatientIdentity, { patientId: In([...ids]) });
  const identityOf = new Map(identities.map((each) => [each.patientId, each]));
  const consents = await tx.findBy(Consent, { patientId: In([...ids]), withdrawnAt: IsNull() });
  return ids.flatMap((id) => {
    const patient = patients.get(id);
    const identity = identityOf.get(id);
    if (patient === undefined || identity === undefined) return [];
    return [{ patient, identity, consents: consents.filter(({ patientId }) => patientId === id) }];
  });
}

/** Newest first. */
async function casesInScope(tx: EntityManager, actor: Actor, patientId: string): Promise<TreatmentCase[]> {
  const cases = await tx.find(TreatmentCase, { where: { patientId }, order: { id: 'DESC' } });
  const scope = clinicScope(actor);
  return cases.filter(({ clinicIds }) => scope === null || clinicIds.some((id) => scope.includes(id)));
}
