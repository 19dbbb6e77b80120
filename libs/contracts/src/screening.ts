import { z } from 'zod';
import { id, instant, page, version } from './primitives.js';

/** What stands out among measurements and remakes. It supports judgement; nothing waits for it. */
export const screeningFindingView = z.object({
  id,
  version,
  /** One value, a series that has left its level, or a share of cases that went back. */
  kind: z.enum(['value', 'drift', 'share']),
  comparedWith: z.enum([
    'own-change',
    'clinic',
    'organisation',
    'own-series',
    'clinic-series',
    'device-series',
    'laboratories',
    'laboratory-series',
    'work-centre-series',
  ]),
  groupSize: z.int(),
  /** Of the measurement; null for a share. */
  code: z.string().nullable(),
  sentence: z.string(),
  /** The figures behind the sentence, by the names of the method. */
  evidence: z.record(z.string(), z.unknown()),
  /** Null where it is not about one case, as are the six that follow. */
  caseId: id.nullable(),
  caseNumber: z.string().nullable(),
  stageId: id.nullable(),
  patientName: z.string().nullable(),
  clinicName: z.string().nullable(),
  laboratoryName: z.string().nullable(),
  workCentreName: z.string().nullable(),
  deviceName: z.string().nullable(),
  foundAt: instant,
  seenAt: instant.nullable(),
  seenBy: z.string().nullable(),
});
export type ScreeningFindingView = z.output<typeof screeningFindingView>;

export const screeningFindingQuery = z.strictObject({
  seen: z.enum(['yes', 'no']).optional(),
  stageId: id.optional(),
  cursor: z.string().max(500).optional(),
  limit: z.coerce.number().int().min(1).max(100).default(20),
});
export type ScreeningFindingQuery = z.output<typeof screeningFindingQuery>;

export const screeningFindingPage = page(screeningFindingView);
export type ScreeningFindingPage = z.output<typeof screeningFindingPage>;
