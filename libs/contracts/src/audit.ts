import { z } from 'zod';
import { id, instant, localDate, page } from './primitives.js';

/** Who did what and when: every part of the search may be left out. */
export const auditQuery = z.strictObject({
  /** The person; left out: anybody, the service included. */
  actorId: id.optional(),
  /** The whole name of the deed, or its beginning. */
  action: z
    .string()
    .regex(/^[a-z0-9-]{1,60}$/, 'the name of a deed or its beginning, such as visit-moved or visit-')
    .optional(),
  /** Everything that belongs to the case of this number. */
  caseNumber: z
    .string()
    .regex(/^\d{2}-\d{4,}$/, 'the number of a case such as 27-0012')
    .optional(),
  /** First and last date, by the practice's own clock. */
  fromOn: localDate.optional(),
  untilOn: localDate.optional(),
  cursor: z.string().max(500).optional(),
  limit: z.coerce.number().int().min(1).max(200).default(50),
});
export type AuditQuery = z.output<typeof auditQuery>;

export const auditEntryView = z.object({
  id,
  at: instant,
  /** Null: the service by itself. */
  by: z.string().nullable(),
  action: z.string(),
  subjectKind: z.string(),
  subjectId: id.nullable(),
  /** Of what a practice consists of; null for what has no name, and for patients. */
  subjectName: z.string().nullable(),
  caseId: id.nullable(),
  caseNumber: z.string().nullable(),
  requestId: z.string().nullable(),
  /** Ids and values, never who a patient is. */
  details: z.record(z.string(), z.unknown()),
});
export type AuditEntryView = z.output<typeof auditEntryView>;

export const auditPage = page(auditEntryView);
export type AuditPage = z.output<typeof auditPage>;
