import { z } from 'zod';
import { zoneName } from './primitives.js';

/** A table of patients as it was saved, with what must be known to read it. */
export const importPatientTable = z.strictObject({
  /** The bytes of the file, since its encoding is part of what is read; the request as a whole may have 8 MiB. */
  contentBase64: z.base64().min(1).max(8_000_000),
  /** Time zone of rows that name none. */
  zone: zoneName,
  dateOrder: z.enum(['ymd', 'dmy', 'mdy']).default('ymd'),
  encoding: z.enum(['utf-8', 'windows-1252']).default('utf-8'),
  /** Header of the file to column, where the file calls it otherwise. */
  mapping: z.record(z.string().max(200), z.string().max(100)).default({}),
  /** Changes those who are there already, in what the file speaks of. */
  isUpdating: z.boolean().default(false),
  /** All rows or none. */
  isStrict: z.boolean().default(false),
  /** Tells what would happen and keeps nothing of it. */
  isTrial: z.boolean().default(false),
});
export type ImportPatientTable = z.output<typeof importPatientTable>;

export const importedPatientTable = z.object({
  rows: z.int(),
  added: z.int(),
  updated: z.int(),
  /** Already there, nothing to change. */
  unchanged: z.int(),
  /** False for a trial, and for a strict import of a file with rejected rows. */
  isWritten: z.boolean(),
  rejectedCount: z.int(),
  /** The first of them. */
  rejected: z.array(z.object({ line: z.int(), reason: z.string() })),
  /** All rejected rows with their reasons, ready to be corrected and imported; null without any. */
  rejectsCsv: z.string().nullable(),
  ignoredColumns: z.array(z.string()),
});
export type ImportedPatientTable = z.output<typeof importedPatientTable>;
