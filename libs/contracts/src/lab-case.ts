import { z } from 'zod';
import { deliveredText } from './delivered.js';
import { signPrescription } from './capture.js';
import { caseLabStep, caseView } from './case.js';
import { labMaterial } from './caution.js';
import { labQuestion } from './lab.js';
import { arch, id, instant, stageCode } from './primitives.js';

const labCaseStep = caseLabStep.extend({
  /** Where and by when it is made; null while it is not planned. */
  laboratoryId: id.nullable(),
  workCentreId: id.nullable(),
  handsOnMinutes: z.int().nullable(),
  dueBackAt: instant.nullable(),
  /** Why it may not start yet; null when it may. */
  waitsFor: z.string().nullable(),
  question: labQuestion.nullable(),
});

/** One signed hand-over of a stage: what is to be made, from which values and objects. */
const workOrder = z.object({
  id,
  stage: stageCode,
  title: deliveredText,
  round: z.int(),
  arches: z.array(arch),
  signedAt: instant,
  signedBy: z.string(),
  /** A later order of the same stage takes its place. */
  superseded: z.boolean(),
  work: z.array(z.string()),
  /** Measurements, records and wishes, each with its value and unit in words. */
  values: z.array(z.object({ name: deliveredText, value: z.string() })),
  objects: z.array(deliveredText),
});
export type WorkOrder = z.output<typeof workOrder>;

/** What is written on a hand-over, as it is typed so far. */
export const prescriptionPreviewQuery = signPrescription.pick({ shade: true, mould: true, note: true });
export type PrescriptionPreviewQuery = z.output<typeof prescriptionPreviewQuery>;

/** What a laboratory would be sent if the hand-over were signed now. */
export const prescriptionPreview = workOrder.pick({ values: true }).extend({
  /** Null while the work is not planned. */
  laboratoryName: z.string().nullable(),
  work: z.array(deliveredText),
  /** Codes that its labels will bear. */
  objects: z.array(z.string()),
  avoidMaterials: z.array(labMaterial),
});
export type PrescriptionPreview = z.output<typeof prescriptionPreview>;

/**
 * What a laboratory sees of a case: number, work, dates and the orders addressed to it. No name, no birth date, no
 * contact, no wishes, nothing of the case's history.
 */
export const labCaseView = caseView
  .pick({
    id: true,
    version: true,
    number: true,
    state: true,
    title: true,
    arches: true,
    zone: true,
    deliveryOn: true,
    stages: true,
    transports: true,
  })
  .extend({ labSteps: z.array(labCaseStep), workOrders: z.array(workOrder) });
export type LabCaseView = z.output<typeof labCaseView>;

export const labCasePage = z.object({
  items: z.array(
    labCaseView.pick({ id: true, version: true, number: true, state: true, title: true, deliveryOn: true }),
  ),
  next: z.string().nullable(),
});
export type LabCasePage = z.output<typeof labCasePage>;
