import type { CreatePatient, PatientView } from '@archwright/contracts';
import { requireVersion } from '@archwright/platform';
import { Patient, PatientIdentity, recordAudit } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { reconcileConsents, type ConsentWording } from './consents.js';
import { enterPatients, identityFieldsOf, planningFieldsOf } from './enter-patients.js';
import { lockPatient } from './patient-access.js';
import { rewriteNameKeys } from './name-keys.js';
import { recheckPatient } from '../rechecks/recheck-stages.js';
import { viewPatient } from './view-patient.js';

const AT_THE_DESK: ConsentWording = 'reminders-1';

/**
 * Enters a patient, who accepts the clinics of whoever enters them until somebody says otherwise.
 *
 * @throws {CalendarTextError} when the zone is no IANA time zone
 */
export async function createPatient(
  tx: EntityManager,
  actor: Actor,
  body: CreatePatient,
  now: Date,
): Promise<PatientView> {
  const origin = { action: 'patient-created', wording: AT_THE_DESK };
  const [id = ''] = await enterPatients(tx, actor, [{ body, importKey: null }], origin, now);
  return viewPatient(tx, actor, id);
}

/**
 * Replaces what is known of a patient.
 *
 * @param version the version that the change is based on
 * @throws {PreconditionFailedError} when somebody changed the patient meanwhile
 */
export async function updatePatient(
  tx: EntityManager,
  actor: Actor,
  patientId: string,
  version: number,
  body: CreatePatient,
  now: Date,
): Promise<PatientView> {
  const patient = await lockPatient(tx, actor, patientId);
  requireVersion(version, patient.version);
  await replacePatient(tx, actor, patient, body, AT_THE_DESK, now);
  return viewPatient(tx, actor, patientId);
}

/** Writes what is known of a patient whose row is locked. */
export async function replacePatient(
  tx: EntityManager,
  actor: Actor,
  { id, version }: Pick<Patient, 'id' | 'version'>,
  body: CreatePatient,
  wording: ConsentWording,
  now: Date,
): Promise<void> {
  const before = await tx.findOneByOrFail(PatientIdentity, { patientId: id });
  await tx.update(Patient, { id }, { ...planningFieldsOf(body), version: version + 1 });
  await tx.update(PatientIdentity, { patientId: id }, identityFieldsOf(body));
  await rewriteNameKeys(tx, id, body);
  await reconcileConsents(tx, actor, id, body.reminderConsent, wording, now);
  const subject = { subjectKind: 'patient', subjectId: id };
  await recordAudit(tx, {
    actorId: actor.userId,
    action: 'patient-changed',
    ...subject,
    details: {},
    at: now,
  });
  // It chooses between published ranges.
  if (before.sex !== body.sex) await recheckPatient(tx, actor.organisationId, id, now);
}
