import { z } from 'zod';
import { id, instant, sentence, slug, version } from './primitives.js';
import { labStepState } from './case.js';
import { objectKind, objectState } from './custody.js';
import { told } from './told.js';

export const transferState = z.enum(['proposed', 'accepted', 'declined', 'withdrawn']);

/** A case on its way to another clinic, or to a practice outside, with all that goes along. */
export const transferView = z.object({
  id,
  version,
  state: transferState,
  caseId: id,
  caseNumber: z.string(),
  patientName: z.string(),
  fromClinicId: id,
  fromClinicName: z.string(),
  /** Null when it goes to a practice outside. */
  toClinicId: id.nullable(),
  toName: z.string(),
  reason: z.string(),
  decisionReason: z.string().nullable(),
  proposedAt: instant,
  decidedAt: instant.nullable(),
  sentence: z.string(),
  told,
  /** Visits still booked; none once the transfer is proposed. */
  visitsToCome: z.int(),
  /** Laboratory work that was begun: it is finished and sent to the clinic that goes on. */
  labWork: z.array(z.object({ code: slug, state: labStepState, endsAt: instant.nullable() })),
  /** Every object that is not gone, and who has it: what the old clinic has is forwarded by hand. */
  objects: z.array(
    z.object({
      id,
      code: z.string(),
      kind: objectKind,
      state: objectState,
      holder: z.string(),
      clinicId: id.nullable(),
    }),
  ),
});
export type TransferView = z.output<typeof transferView>;

export const transferQuery = z.strictObject({
  state: transferState.optional(),
  /** To a clinic of one's own, or from one. */
  direction: z.enum(['incoming', 'outgoing']).optional(),
  cursor: z.string().max(500).optional(),
  limit: z.coerce.number().int().min(1).max(100).default(20),
});
export type TransferQuery = z.output<typeof transferQuery>;

export const transferPage = z.object({ items: z.array(transferView), next: z.string().nullable() });
export type TransferPage = z.output<typeof transferPage>;

/** The receiving clinic accepts or declines; the clinic that proposed it withdraws. */
export const decideTransfer = z.strictObject({ decision: z.enum(['accept', 'decline', 'withdraw']), reason: sentence });
export type DecideTransfer = z.output<typeof decideTransfer>;
