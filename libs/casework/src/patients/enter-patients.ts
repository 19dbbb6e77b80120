import { requireZone } from '@archwright/calendar';
import type { CreatePatient } from '@archwright/contracts';
import { Patient, PatientIdentity, Resource, recordAudit, uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { giveConsents, type ConsentWording } from './consents.js';
import { writeNameKeys } from './name-keys.js';
import { searchKeyOf } from './search-key.js';

/** The patient's resource bears no name: labels are shown where time is taken. */
const RESOURCE_LABEL = 'Patient';

export interface NewPatient {
  readonly body: CreatePatient;
  /** The patient's key in the file it came from; null when typed in. */
  readonly importKey: string | null;
}

/**
 * Writes the rows of new patients, who accept the clinics of whoever enters them until somebody says otherwise.
 *
 * @param origin what the audit trail calls the deed, and the wording that consents refer to
 * @returns ids in the order of `patients`
 * @throws {CalendarTextError} when a zone is no IANA time zone
 */
export async function enterPatients(
  tx: EntityManager,
  actor: Actor,
  patients: readonly NewPatient[],
  origin: { readonly action: string; readonly wording: ConsentWording },
  now: Date,
): Promise<string[]> {
  const entered = patients.map((each) => ({ ...each, id: uuidv7() }));
  await tx.insert(
    Resource,
    entered.map(({ id }) => ({ id, kind: 'patient' as const, label: RESOURCE_LABEL })),
  );
  await tx.insert(
    Patient,
    entered.map(({ id, body }) => ({
      ...planningFieldsOf(body),
      id,
      acceptedClinicIds: [...actor.clinicIds],
      createdAt: now,
    })),
  );
  await tx.insert(
    PatientIdentity,
    entered.map(({ id, body, importKey }) => ({ ...identityFieldsOf(body), importKey, id: uuidv7(), patientId: id })),
  );
  await writeNameKeys(tx, entered);
  const given = entered.flatMap(({ id, body }) =>
    [...new Set(body.reminderConsent)].map((channel) => ({ patientId: id, channel })),
  );
  await giveConsents(tx, actor, given, origin.wording, now);
  await recordAudit(
    tx,
    ...entered.map(({ id }) => ({
      actorId: actor.userId,
      action: origin.action,
      subjectKind: 'patient',
      subjectId: id,
      details: {},
      at: now,
    })),
  );
  return entered.map(({ id }) => id);
}

export function planningFieldsOf(body: CreatePatient) {
  return {
    zone: requireZone(body.zone),
    locale: body.locale,
    wishes: body.wishes,
    chairMinutesPerDay: body.chairMinutesPerDay,
    companionPermitted: body.companionPermitted,
    interpreter: body.interpreter,
    wheelchairRoom: body.wheelchairRoom,
    travelMinutes: body.travelMinutes,
  };
}

export function identityFieldsOf(body: CreatePatient) {
  const { givenName, familyName, birthOn, sex, mail, phone, address, accessNote, companionName } = body;
  const searchKey = searchKeyOf({ familyName, givenName });
  return { givenName, familyName, birthOn, sex, mail, phone, address, accessNote, companionName, searchKey };
}
