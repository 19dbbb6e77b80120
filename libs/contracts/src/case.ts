import { z } from 'zod';
import { said, told } from './told.js';
import { deliveredText } from './delivered.js';
import { arch, id, instant, localDate, sentence, slug, stageCode, version } from './primitives.js';
import { appointmentState } from './appointment.js';
import { wishes } from './patient.js';
import { plannedTransport } from './plan.js';
import { setVisitPlace, visitPlace } from './visit-place.js';

export const caseState = z.enum(['enquiry', 'open', 'paused', 'transferred', 'abandoned', 'closed', 'ended-by-death']);
export type CaseState = z.output<typeof caseState>;

export const stageState = z.enum(['waiting', 'planned', 'ready', 'in-progress', 'passed', 'repeated', 'dropped']);
export type StageState = z.output<typeof stageState>;

export const labStepState = z.enum([
  'unplanned',
  'planned',
  'ready',
  'started',
  'paused',
  'finished',
  'rejected',
  'discarded',
]);
export type LabStepState = z.output<typeof labStepState>;

const caseArches = z
  .array(z.strictObject({ arch, pathVersionId: id }))
  .min(1)
  .max(2)
  .refine((list) => new Set(list.map((entry) => entry.arch)).size === list.length, 'each arch once');

export const openCase = z.strictObject({
  patientId: id,
  /** An enquiry books the examination only; path and arches stay provisional until the clinician decides. */
  enquiry: z.boolean().default(false),
  arches: caseArches,
  clinicIds: z.array(id).min(1).max(20),
  clinicianId: id.nullable().default(null),
  parentCaseId: id.nullable().default(null),
  /** Left out: the patient's own. */
  wishes: wishes.optional(),
  visitPlace: setVisitPlace.prefault({ place: 'clinic' }),
});
export type OpenCase = z.output<typeof openCase>;

/** Dated decisions that gate the first final impression or laboratory order. No amounts. */
export const recordConsent = z.strictObject({
  consentOn: localDate.nullable(),
  treatmentApprovedOn: localDate.nullable(),
  medicinesAskedOn: localDate.nullable(),
});
export type RecordConsent = z.output<typeof recordConsent>;

export const changeCaseState = z.strictObject({
  to: caseState,
  reason: sentence,
  reviewOn: localDate.nullable().default(null),
  /** For a transfer: the clinic that takes the case over. */
  clinicId: id.optional(),
  /** For a transfer out of the organisation, in the place of a clinic: who takes the case over. */
  outsidePractice: sentence.optional(),
  /** For an enquiry that opens: what was decided on; each left out: as it was opened. */
  arches: caseArches.optional(),
  clinicianId: id.nullable().optional(),
  wishes: wishes.optional(),
});
export type ChangeCaseState = z.output<typeof changeCaseState>;

/** What changing the case's state would do, shown before it is done. */
export const caseStateEffects = z.object({
  bookings: z.array(said).min(1),
  labWork: z.array(said).min(1),
  objects: z.array(said).min(1),
  notices: z.array(said).min(1),
});
export type CaseStateEffects = z.output<typeof caseStateEffects>;

const caseStage = z.object({
  id,
  code: stageCode,
  title: deliveredText,
  position: z.int(),
  round: z.int(),
  arches: z.array(arch),
  state: stageState,
  isDelivery: z.boolean(),
  isReview: z.boolean(),
  appointmentId: id.nullable(),
  appointmentState: appointmentState.nullable(),
  startsAt: instant.nullable(),
  endsAt: instant.nullable(),
  clinicName: z.string().nullable(),
  clinicianName: z.string().nullable(),
});

export const caseLabStep = z.object({
  id,
  code: slug,
  title: deliveredText,
  arches: z.array(arch),
  round: z.int(),
  afterStage: stageCode,
  beforeStage: stageCode,
  workCentre: slug,
  state: labStepState,
  /** Why the laboratory rejected the work; null for any other. */
  stateReason: z.string().nullable(),
  placeLabel: z.string().nullable(),
  startsAt: instant.nullable(),
  endsAt: instant.nullable(),
});

export const caseEventView = z.object({
  at: instant,
  kind: slug,
  sentence: z.string(),
  told,
  by: z.string().nullable(),
});

const linkedCase = z.object({ id, number: z.string(), state: caseState, title: deliveredText });

/** One case as one line from the first visit to recall: plan, reality, alerts, who did what. */
export const caseView = z.object({
  id,
  version,
  number: z.string(),
  state: caseState,
  stateReason: z.string().nullable(),
  reviewOn: localDate.nullable(),
  title: deliveredText,
  sentence: z.string(),
  told,
  /** The case whose denture this one repairs, relines or replaces. */
  parentCase: linkedCase.nullable(),
  /** Cases that do so to this one, the first first. */
  followingCases: z.array(linkedCase),
  patient: z.object({ id, name: z.string(), birthOn: localDate, phone: z.string().nullable() }),
  arches: z.array(z.object({ arch, pathVersionId: id, pathTitle: deliveredText })),
  clinicIds: z.array(id),
  zone: z.string(),
  clinicianId: id.nullable(),
  wishes,
  visitPlace: z.object({ place: visitPlace, travelMinutes: z.int().nullable() }),
  consentOn: localDate.nullable(),
  treatmentApprovedOn: localDate.nullable(),
  medicinesAskedOn: localDate.nullable(),
  deliveryOn: localDate.nullable(),
  /** Whether offers can be asked for: the case is open, and some visit of its plan has no firm time. */
  plannable: z.boolean(),
  hold: z.object({ id, expiresAt: instant, planHash: z.string() }).nullable(),
  stages: z.array(caseStage),
  labSteps: z.array(caseLabStep),
  transports: z.array(plannedTransport),
  alerts: z.array(z.object({ id, stage: stageCode, reason: z.string(), state: z.string() })),
  events: z.array(caseEventView),
});
export type CaseView = z.output<typeof caseView>;

export const caseSummary = caseView.pick({
  id: true,
  version: true,
  number: true,
  state: true,
  title: true,
  sentence: true,
  told: true,
  patient: true,
  deliveryOn: true,
});
export type CaseSummary = z.output<typeof caseSummary>;

export const casePage = z.object({ items: z.array(caseSummary), next: z.string().nullable() });
export type CasePage = z.output<typeof casePage>;

export const stateEffectsQuery = z.strictObject({ to: caseState });
export type StateEffectsQuery = z.output<typeof stateEffectsQuery>;

export const caseQuery = z.strictObject({
  q: z.string().trim().max(100).optional(),
  state: caseState.optional(),
  cursor: z.string().max(500).optional(),
  limit: z.coerce.number().int().min(1).max(100).default(20),
});
export type CaseQuery = z.output<typeof caseQuery>;
