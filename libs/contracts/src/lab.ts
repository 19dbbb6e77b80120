import { z } from 'zod';
import { said, told } from './told.js';
import { deliveredText } from './delivered.js';
import { arch, id, instant, localDate, sentence, slug, version } from './primitives.js';
import { labStepState } from './case.js';
import { labMaterial } from './caution.js';

export const loadQuery = z.strictObject({
  laboratoryId: id,
  from: localDate,
  days: z.coerce.number().int().min(1).max(60).default(10),
});
export type LoadQuery = z.output<typeof loadQuery>;

/** Minutes booked of minutes open, per work centre and day, and the cases that will be late. */
export const loadView = z.object({
  laboratoryId: id,
  laboratoryName: z.string(),
  zone: z.string(),
  sentence: z.string(),
  told,
  days: z.array(localDate),
  workCentres: z.array(
    z.object({
      id,
      code: slug,
      name: z.string(),
      places: z.int(),
      days: z.array(z.object({ on: localDate, bookedMinutes: z.int(), openMinutes: z.int() })),
    }),
  ),
  atRisk: z.array(
    z.object({
      caseId: id,
      caseNumber: z.string(),
      sentence: z.string(),
      told,
      cause: said,
      /** The dispatch list in which the step behind it stands. */
      workCentreId: id,
      on: localDate,
    }),
  ),
});
export type LoadView = z.output<typeof loadView>;

export const dispatchQuery = z.strictObject({ laboratoryId: id, on: localDate, workCentreId: id.optional() });
export type DispatchQuery = z.output<typeof dispatchQuery>;

/** A question of the laboratory to the clinic. The step's clock stands still until it is answered. */
export const labQuestion = z.object({
  id,
  question: z.string(),
  askedAt: instant,
  askedBy: z.string(),
  /** Unanswered until then, it is put before the clinic's front desk too. */
  escalatesAt: instant,
  /** Null while it is open, as are when and by whom it was answered. */
  answer: z.string().nullable(),
  answeredAt: instant.nullable(),
  answeredBy: z.string().nullable(),
});
export type LabQuestionView = z.output<typeof labQuestion>;

/** What laboratories wait to hear from the clinics of the person who asks, longest waiting first. */
export const openLabQuestions = z.object({
  items: z.array(
    labQuestion.extend({
      caseId: id,
      caseNumber: z.string(),
      patientName: z.string(),
      birthOn: localDate,
      step: z.string(),
      arches: z.array(arch),
      laboratoryName: z.string(),
      /** The clinic's own, for the times above. */
      zone: z.string(),
    }),
  ),
});
export type OpenLabQuestions = z.output<typeof openLabQuestions>;

export const dispatchStep = z.object({
  id,
  version,
  caseId: id,
  caseNumber: z.string(),
  code: slug,
  title: deliveredText,
  arches: z.array(arch),
  workCentreId: id,
  workCentre: z.string(),
  placeLabel: z.string(),
  startsAt: instant,
  endsAt: instant,
  handsOnMinutes: z.int(),
  state: labStepState,
  dueBackAt: instant.nullable(),
  slackMinutes: z.int().nullable(),
  /** Why it may not start yet; null when it may. */
  waitsFor: z.string().nullable(),
  /** The last one asked about this step. */
  question: labQuestion.nullable(),
  /** Said to be ready by then and no sooner; the clinic has not decided yet. Null where nobody has said so. */
  lateUntil: instant.nullable(),
  /** The patient is allergic to these; "another": ask the clinic which. */
  avoidMaterials: z.array(labMaterial),
});
export type DispatchStep = z.output<typeof dispatchStep>;

export const caseStepsQuery = z.strictObject({ caseId: id });
export type CaseStepsQuery = z.output<typeof caseStepsQuery>;

/** The planned work of one case at the caller's laboratories, earliest first. */
export const caseSteps = z.object({ items: z.array(dispatchStep) });
export type CaseSteps = z.output<typeof caseSteps>;

export const dispatchView = z.object({
  laboratoryId: id,
  on: localDate,
  zone: z.string(),
  sentence: z.string(),
  told,
  /** The order in which the list is to be worked, and why. */
  order: z.string(),
  steps: z.array(dispatchStep),
});
export type DispatchView = z.output<typeof dispatchView>;

export const labStepAction = z.discriminatedUnion('action', [
  z.strictObject({ action: z.literal('start') }),
  z.strictObject({ action: z.literal('pause') }),
  z.strictObject({ action: z.literal('finish') }),
  z.strictObject({ action: z.literal('reject'), reason: sentence }),
  z.strictObject({ action: z.literal('ask'), question: sentence }),
]);
export type LabStepAction = z.output<typeof labStepAction>;

/** The bench says that work will be late: the clinic sees whom it falls on, and plans are looked for. */
export const reportLateStep = z.strictObject({ readyAt: instant, reason: sentence });
export type ReportLateStep = z.output<typeof reportLateStep>;

/** How far late work reaches, as its laboratory may know it. */
export const lateStep = z.object({ step: dispatchStep, cases: z.int(), visits: z.int() });
export type LateStep = z.output<typeof lateStep>;

export const answerQuestion = z.strictObject({ answer: sentence });
export type AnswerQuestion = z.output<typeof answerQuestion>;
