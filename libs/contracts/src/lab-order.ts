import { z } from 'zod';
import { deliveredText } from './delivered.js';
import { arch, id, instant, sentence, slug, stageCode, version } from './primitives.js';

export const labOrderState = z.enum(['ordered', 'accepted', 'declined', 'withdrawn', 'finished']);

/** The signed work of a stage goes to a laboratory of its own. */
export const sendLabOrder = z.strictObject({
  stageId: id,
  laboratoryId: id,
  /** When it has to be back in the clinic; left out: when the visit that it is for is booked. */
  neededBy: instant.optional(),
});
export type SendLabOrder = z.output<typeof sendLabOrder>;

/** What the laboratory works from: number, arches, values and codes. Nobody's identity. */
export const labOrderDocument = z.object({
  practice: z.string(),
  clinic: z.string(),
  stage: stageCode,
  round: z.int(),
  arches: z.array(arch),
  steps: z.array(z.object({ code: slug, title: deliveredText, arches: z.array(arch), round: z.int() })),
  objects: z.array(deliveredText),
  /** The signed work order as it stood when it was sent. */
  prescription: z.record(z.string(), z.unknown()),
});
export type LabOrderDocument = z.output<typeof labOrderDocument>;

const benchTime = z.strictObject({ placeId: id, startsAt: instant, endsAt: instant });

/** The first four are the laboratory's, the last the practice's. */
export const labOrderAction = z.discriminatedUnion('action', [
  z.strictObject({
    action: z.literal('accept'),
    /** When it will be back in the clinic. */
    promisedAt: instant,
    /** Time that the work takes at the laboratory's own benches, on the five-minute grid. */
    benchTimes: z.array(benchTime).max(60).default([]),
  }),
  z.strictObject({ action: z.literal('promise'), promisedAt: instant }),
  z.strictObject({ action: z.literal('decline'), reason: sentence }),
  z.strictObject({ action: z.literal('finish') }),
  z.strictObject({ action: z.literal('withdraw'), reason: sentence }),
]);
export type LabOrderAction = z.output<typeof labOrderAction>;

export const labOrderView = z.object({
  id,
  version,
  state: labOrderState,
  caseNumber: z.string(),
  /** The case of the practice that sent it; null for the laboratory. */
  caseId: id.nullable(),
  /** As the practice lists it; null for the laboratory. */
  laboratoryName: z.string().nullable(),
  sentAt: instant,
  neededBy: instant,
  promisedAt: instant.nullable(),
  declineReason: z.string().nullable(),
  sentence: z.string(),
  order: labOrderDocument,
  /** What the signed work order says, each value with its unit in words. */
  values: z.array(z.object({ name: deliveredText, value: z.string() })),
});
export type LabOrderView = z.output<typeof labOrderView>;

export const labOrderQuery = z.strictObject({
  state: labOrderState.optional(),
  /** Of the practice's: orders of the work that follows one of its stages. */
  stageId: id.optional(),
  cursor: z.string().max(500).optional(),
  limit: z.coerce.number().int().min(1).max(100).default(20),
});
export type LabOrderQuery = z.output<typeof labOrderQuery>;

export const labOrderPage = z.object({ items: z.array(labOrderView), next: z.string().nullable() });
export type LabOrderPage = z.output<typeof labOrderPage>;
