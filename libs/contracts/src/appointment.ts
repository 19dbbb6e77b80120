import { z } from 'zod';
import { told } from './told.js';
import { deliveredText } from './delivered.js';
import { arch, id, instant, localDate, sentence, slug, stageCode, version } from './primitives.js';
import { casePlan } from './plan.js';
import { visitPlace } from './visit-place.js';

export const appointmentState = z.enum([
  'held',
  'provisional',
  'booked',
  'arrived',
  'in-progress',
  'completed',
  'cancelled',
  'missed',
]);
export type AppointmentState = z.output<typeof appointmentState>;

export const appointmentView = z.object({
  id,
  version,
  caseId: id.nullable(),
  caseNumber: z.string().nullable(),
  patientId: id,
  patientName: z.string(),
  birthOn: localDate,
  /** Null when no number is known. */
  phone: z.string().nullable(),
  /** What has to be ready for this patient. */
  needs: z.object({
    wheelchairRoom: z.boolean(),
    /** The language; null when nobody has to interpret. */
    interpreter: z.string().nullable(),
    /** Who may be told about the visits. */
    companion: z.string().nullable(),
  }),
  clinicId: id,
  clinicName: z.string(),
  zone: z.string(),
  /** Null, with an empty label, for a visit at the patient's home. */
  chairId: id.nullable(),
  chairLabel: z.string(),
  place: visitPlace,
  /** The clinician's way to a patient at home, each way; null at the clinic. */
  homeTravelMinutes: z.int().nullable(),
  /** Where a visit at home leads, and how to get in; null at the clinic, or when it is not known. */
  address: z.string().nullable(),
  accessNote: z.string().nullable(),
  clinicianId: id,
  clinicianName: z.string(),
  stages: z.array(stageCode),
  title: deliveredText,
  startsAt: instant,
  endsAt: instant,
  state: appointmentState,
});
export type AppointmentView = z.output<typeof appointmentView>;

export const dayQuery = z.strictObject({ on: localDate, clinicId: id.optional(), clinicianId: id.optional() });
export type DayQuery = z.output<typeof dayQuery>;

export const dayBoard = z.object({
  on: localDate,
  sentence: z.string(),
  told,
  appointments: z.array(appointmentView),
});
export type DayBoard = z.output<typeof dayBoard>;

/** What a person may do with a visit on the day. */
export const visitAction = z.strictObject({ action: z.enum(['arrive', 'undo-arrival', 'start', 'finish', 'miss']) });
export type VisitAction = z.output<typeof visitAction>;

export const previewMove = z.strictObject({
  appointmentId: id,
  startsAt: instant,
  clinicianId: id.optional(),
  reason: sentence.optional(),
  /** Left out: as few other visits move as possible. `earliest`: placement as early as possible. */
  aim: z.enum(['fewest-moves', 'earliest']).optional(),
});
export type PreviewMove = z.output<typeof previewMove>;

export const previewCancel = z.strictObject({
  appointmentId: id,
  reason: sentence,
  /** The patient can come again from this instant on; left out: at any time but the cancelled one. */
  notBefore: instant.optional(),
  /** Re-plan the rest from this instant, or drop it all. */
  then: z.enum(['replan', 'drop-rest']).default('replan'),
});
export type PreviewCancel = z.output<typeof previewCancel>;

/** One visit before and after a change; `before` is null for a new one, `after` for a dropped one. */
const visitChange = z.object({
  stages: z.array(stageCode),
  title: deliveredText,
  appointmentId: id.nullable(),
  patientName: z.string(),
  caseNumber: z.string(),
  before: instant.nullable(),
  after: instant.nullable(),
  clinicName: z.string(),
  zone: z.string(),
});
const labChange = z.object({
  code: slug,
  title: deliveredText,
  arches: z.array(arch),
  before: instant.nullable(),
  after: instant.nullable(),
});
const call = z.object({
  patientId: id,
  patientName: z.string(),
  phone: z.string().nullable(),
  /** True: told by mail as soon as the change is made, and nobody has to call. */
  byMail: z.boolean(),
});

/** What a change would do, shown before anything changes. Applying it needs `id` and `planHash`. */
export const ripple = z.object({
  id,
  planHash: z.string(),
  caseId: id,
  visits: z.array(visitChange),
  labSteps: z.array(labChange),
  calls: z.array(call),
  untouchedVisits: z.int(),
  plan: casePlan,
});
export type Ripple = z.output<typeof ripple>;

export const applyRipple = z.strictObject({ planHash: z.string().min(1) });
export type ApplyRipple = z.output<typeof applyRipple>;

/** Other starts of one visit that leave every other visit of the case where it is. */
export const alternativesView = z.object({
  appointmentId: id,
  zone: z.string(),
  starts: z.array(z.object({ startsAt: instant, clinicianId: id, clinicianName: z.string() })),
});
export type AlternativesView = z.output<typeof alternativesView>;
