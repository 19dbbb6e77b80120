import { z } from 'zod';
import { createPatient, type CreatePatient, type PatientView } from '@archwright/contracts';
import { patientWords } from '../words/desk.js';
import { emptyWishes, wishesDraft, wishesOfDraft, draftOfWishes } from '../wishes/wishes-view.js';

const patientDraft = z.object({
  givenName: z.string(),
  familyName: z.string(),
  birthOn: z.string(),
  sex: z.string(),
  mail: z.string(),
  phone: z.string(),
  address: z.string(),
  accessNote: z.string(),
  locale: z.string(),
  zone: z.string(),
  companionName: z.string(),
  companionPermitted: z.boolean(),
  interpreter: z.string(),
  wheelchairRoom: z.boolean(),
  chairMinutesPerDay: z.string(),
  travelMinutes: z.string(),
  remindByMail: z.boolean(),
  remindByPhone: z.boolean(),
  wishes: wishesDraft,
});

/** The form as typed: every field a text or a tick, so that nothing typed is ever lost to parsing. */
export type PatientDraft = z.output<typeof patientDraft>;

/** A draft that the browser kept over a reload; null when it is none. */
export const readPatientDraft = (kept: unknown): PatientDraft | null => patientDraft.safeParse(kept).data ?? null;

export const emptyPatient = (zone: string): PatientDraft => ({
  givenName: '',
  familyName: '',
  birthOn: '',
  sex: '',
  mail: '',
  phone: '',
  address: '',
  accessNote: '',
  locale: 'en',
  zone,
  companionName: '',
  companionPermitted: false,
  interpreter: '',
  wheelchairRoom: false,
  chairMinutesPerDay: '',
  travelMinutes: '0',
  remindByMail: false,
  remindByPhone: false,
  wishes: emptyWishes,
});

export const draftOfPatient = (patient: Omit<PatientView, 'cases'>): PatientDraft => ({
  givenName: patient.givenName,
  familyName: patient.familyName,
  birthOn: patient.birthOn,
  sex: patient.sex ?? '',
  mail: patient.mail ?? '',
  phone: patient.phone ?? '',
  address: patient.address ?? '',
  accessNote: patient.accessNote ?? '',
  locale: patient.locale,
  zone: patient.zone,
  companionName: patient.companionName ?? '',
  companionPermitted: patient.companionPermitted,
  interpreter: patient.interpreter ?? '',
  wheelchairRoom: patient.wheelchairRoom,
  chairMinutesPerDay: patient.chairMinutesPerDay === null ? '' : String(patient.chairMinutesPerDay),
  travelMinutes: String(patient.travelMinutes),
  remindByMail: patient.reminderConsent.includes('mail'),
  remindByPhone: patient.reminderConsent.includes('phone'),
  wishes: draftOfWishes(patient.wishes),
});

const orNull = (text: string): string | null => (text.trim() === '' ? null : text.trim());

/**
 * What would be sent, or which fields stand in the way, each with what is accepted. Paths are those of the contract,
 * so that refusals of the server land beside the same fields.
 */
export function readPatient(draft: PatientDraft): { body: CreatePatient } | { errors: Record<string, string> } {
  const { remindByMail, remindByPhone, chairMinutesPerDay, travelMinutes, wishes, ...texts } = draft;
  const parsed = createPatient.safeParse({
    ...texts,
    sex: orNull(draft.sex),
    mail: orNull(draft.mail),
    phone: orNull(draft.phone),
    address: orNull(draft.address),
    accessNote: orNull(draft.accessNote),
    companionName: orNull(draft.companionName),
    interpreter: orNull(draft.interpreter),
    chairMinutesPerDay: chairMinutesPerDay.trim() === '' ? null : Number(chairMinutesPerDay),
    travelMinutes: travelMinutes.trim() === '' ? 0 : Number(travelMinutes),
    reminderConsent: [...(remindByMail ? ['mail'] : []), ...(remindByPhone ? ['phone'] : [])],
    wishes: wishesOfDraft(wishes),
  });
  if (parsed.success) return { body: parsed.data };
  const errors: Record<string, string> = {};
  for (const issue of parsed.error.issues) {
    const path = issue.path.join('.');
    errors[path] ??= patientWords.accepted[path] ?? issue.message;
  }
  return { errors };
}
