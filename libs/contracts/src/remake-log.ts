import { z } from 'zod';
import { deliveredText } from './delivered.js';
import { arch, id, instant, localDate, page, slug, stageCode } from './primitives.js';

/** What was made again in a period: the remakes that somebody accepted in it. */
export const remakeLogQuery = z.strictObject({
  /** First and last date, by the practice's own clock. */
  fromOn: localDate,
  untilOn: localDate,
  /** Only remakes of this cause, or of this origin, as `causes` and `origins` name them. The counts stay whole. */
  cause: slug.optional(),
  origin: z.string().trim().min(1).max(200).optional(),
  cursor: z.string().max(500).optional(),
  limit: z.coerce.number().int().min(1).max(100).default(20),
});
export type RemakeLogQuery = z.output<typeof remakeLogQuery>;

const remakeEntry = z.object({
  alertId: id,
  caseId: id,
  caseNumber: z.string(),
  cause: slug,
  causeTitle: z.string(),
  /** What the check found, or what was written; null where a laboratory may not read what a person typed. */
  reason: z.string().nullable(),
  /** Whether a check or a person's eye found it. Who it was stands nowhere here. */
  foundBy: z.enum(['check', 'person']),
  foundAt: deliveredText,
  /** The visit or laboratory step from which everything was made again. */
  origin: deliveredText,
  originKind: z.enum(['visit', 'lab-step']),
  originCode: stageCode,
  arches: z.array(arch),
  /** What was discarded for it. */
  discards: z.array(deliveredText),
  acceptedAt: instant,
});
export type RemakeEntry = z.output<typeof remakeEntry>;

const remakeCount = z.object({
  /** What `cause` or `origin` of the query takes. */
  key: z.string(),
  title: z.string(),
  remakes: z.int(),
  /** Of them, those that a check found. */
  byCheck: z.int(),
  cases: z.int(),
});
export type RemakeCount = z.output<typeof remakeCount>;

export const remakeLog = page(remakeEntry).extend({
  remakes: z.int(),
  cases: z.int(),
  /** The most frequent first. */
  causes: z.array(remakeCount),
  origins: z.array(remakeCount),
});
export type RemakeLog = z.output<typeof remakeLog>;
