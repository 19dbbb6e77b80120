import { z } from 'zod';
import { id, instant, sentence, stageCode, version, zoneName } from './primitives.js';

export const arrivalCheckState = z.enum(['on-its-way', 'arrived', 'open', 'decided', 'withdrawn']);

/** Whether the laboratory's work for a visit is there some days before it. */
export const arrivalCheckView = z.object({
  id,
  version,
  state: arrivalCheckState,
  caseId: id,
  caseNumber: z.string(),
  /** Empty for a laboratory. */
  patientName: z.string(),
  appointmentId: id,
  clinicName: z.string(),
  visitAt: instant,
  zone: zoneName,
  stage: stageCode,
  /** What is not in the clinic. */
  missing: z.array(z.string()),
  reason: z.string().nullable(),
  raisedAt: instant.nullable(),
  decision: z.enum(['wait', 'move']).nullable(),
  decisionNote: z.string().nullable(),
});
export type ArrivalCheckView = z.output<typeof arrivalCheckView>;

export const arrivalCheckQuery = z.strictObject({
  state: arrivalCheckState.optional(),
  caseId: id.optional(),
  cursor: z.string().max(500).optional(),
  limit: z.coerce.number().int().min(1).max(100).default(20),
});
export type ArrivalCheckQuery = z.output<typeof arrivalCheckQuery>;

export const arrivalCheckPage = z.object({ items: z.array(arrivalCheckView), next: z.string().nullable() });
export type ArrivalCheckPage = z.output<typeof arrivalCheckPage>;

/** Wait for it: the visit stays. Move: the call to the patient stays on the call list, and the visit is moved from there. */
export const decideArrival = z.strictObject({ decision: z.enum(['wait', 'move']), note: sentence });
export type DecideArrival = z.output<typeof decideArrival>;
