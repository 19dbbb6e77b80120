import { requireZone } from '@archwright/calendar';
import type { CreatePatient, PatientView } from '@archwright/contracts';
import { requireVersion } from '@archwright/platform';
import { Consent, Patient, PatientIdentity, PatientNameKey, Resource, recordAudit, uuidv7 } from '@archwright/records';
import { IsNull, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { lockPatient } from './patient-access.js';
import { nameKeysOf, searchKeyOf } from './search-key.js';
import { viewPatient } from './view-patient.js';

type Channel = Consent['channel'];

/** The wording that a patient agrees to at the desk: that reminders may come by this channel. */
const CONSENT_WORDING = 'reminders-1';

/** The patient's resource bears no name: labels are shown where time is taken. */
const RESOURCE_LABEL = 'Patient';

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
  const id = uuidv7();
  await tx.insert(Resource, { id, kind: 'patient', label: RESOURCE_LABEL });
  await tx.insert(Patient, { ...planningFieldsOf(body), id, acceptedClinicIds: [...actor.clinicIds], createdAt: now });
  await tx.insert(PatientIdentity, { ...identityFieldsOf(body), id: uuidv7(), patientId: id });
  await writeNameKeys(tx, id, body);
  for (const channel of new Set(body.reminderConsent)) await giveConsent(tx, actor, id, channel, now);
  await audit(tx, actor, 'patient-created', id, now);
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
  await tx.update(Patient, { id: patientId }, { ...planningFieldsOf(body), version: version + 1 });
  await tx.update(PatientIdentity, { patientId }, identityFieldsOf(body));
  await tx.delete(PatientNameKey, { patientId });
  await writeNameKeys(tx, patientId, body);
  await reconcileConsents(tx, actor, patientId, body.reminderConsent, now);
  await audit(tx, actor, 'patient-changed', patientId, now);
  return viewPatient(tx, actor, patientId);
}

function planningFieldsOf(body: CreatePatient) {
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

function identityFieldsOf({ givenName, familyName, birthOn, mail, phone, companionName }: CreatePatient) {
  const searchKey = searchKeyOf({ familyName, givenName });
  return { givenName, familyName, birthOn, mail, phone, companionName, searchKey };
}

async function writeNameKeys(tx: EntityManager, patientId: string, name: CreatePatient): Promise<void> {
  await tx.insert(
    PatientNameKey,
    nameKeysOf(name).map((searchKey) => ({ id: uuidv7(), patientId, searchKey })),
  );
}

/** A withdrawn consent keeps its row: it shows what was agreed to, and until when. */
async function reconcileConsents(
  tx: EntityManager,
  actor: Actor,
  patientId: string,
  wanted: readonly Channel[],
  now: Date,
): Promise<void> {
  const live = await tx.findBy(Consent, { patientId, withdrawnAt: IsNull() });
  for (const { id, channel } of live) {
    if (!wanted.includes(channel)) await tx.update(Consent, { id }, { withdrawnAt: now });
  }
  const given = new Set(live.map(({ channel }) => channel));
  for (const channel of new Set(wanted)) {
    if (!given.has(channel)) await giveConsent(tx, actor, patientId, channel, now);
  }
}

async function giveConsent(
  tx: EntityManager,
  actor: Actor,
  patientId: string,
  channel: Channel,
  now: Date,
): Promise<void> {
  await tx.insert(Consent, {
    id: uuidv7(),
    patientId,
    channel,
    givenAt: now,
    wordingVersion: CONSENT_WORDING,
    recordedBy: actor.userId,
  });
}

function audit(tx: EntityManager, actor: Actor, action: string, patientId: string, at: Date): Promise<void> {
  const subject = { subjectKind: 'patient', subjectId: patientId };
  return recordAudit(tx, { actorId: actor.userId, action, ...subject, requestId: null, details: {}, at });
}
