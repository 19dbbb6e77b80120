import type { CreatePatient, PatientView } from '@archwright/contracts';
import type { Consent, Patient, PatientIdentity } from '@archwright/records';

/** A patient's rows; consents are the live ones. */
export interface PatientRows {
  readonly patient: Patient;
  readonly identity: PatientIdentity;
  readonly consents: readonly Pick<Consent, 'channel'>[];
}

export function patientViewOf(rows: PatientRows): Omit<PatientView, 'cases'> {
  return { id: rows.patient.id, version: rows.patient.version, ...patientBodyOf(rows) };
}

/** What is known of a patient, as a change of it would be sent. */
export function patientBodyOf({ patient, identity, consents }: PatientRows): CreatePatient {
  return {
    givenName: identity.givenName,
    familyName: identity.familyName,
    birthOn: identity.birthOn,
    sex: identity.sex,
    mail: identity.mail,
    phone: identity.phone,
    address: identity.address,
    accessNote: identity.accessNote,
    locale: patient.locale,
    zone: patient.zone,
    companionName: identity.companionName,
    companionPermitted: patient.companionPermitted,
    interpreter: patient.interpreter,
    wheelchairRoom: patient.wheelchairRoom,
    chairMinutesPerDay: patient.chairMinutesPerDay,
    travelMinutes: patient.travelMinutes,
    reminderConsent: consents.map(({ channel }) => channel).sort(),
    wishes: patient.wishes,
  };
}

/** As a person is called in a sentence or a list. */
export function fullName({ givenName, familyName }: Pick<PatientIdentity, 'givenName' | 'familyName'>): string {
  return `${givenName} ${familyName}`;
}
