import { z } from 'zod';
import { id, instant, version } from './primitives.js';
import { objectKind } from './custody.js';

/** Two identifiers at every hand-over: the number of the case and the code of the object, both read off the thing itself. */
const handedOver = z.strictObject({
  caseNumber: z.string().trim().min(1).max(20),
  code: z.string().trim().min(1).max(120),
});
export type HandedOver = z.output<typeof handedOver>;

export const parcelDirection = z.enum(['to-lab', 'to-clinic']);
export const parcelState = z.enum(['packed', 'handed-over', 'received', 'reconciled']);

export const packParcel = z.strictObject({
  direction: parcelDirection,
  clinicId: id,
  laboratoryId: id,
  /** The planned run that takes it, where there is one. */
  courierLegId: id.nullable().default(null),
  objects: z.array(handedOver).min(1).max(50),
});
export type PackParcel = z.output<typeof packParcel>;

export const parcelAction = z.discriminatedUnion('action', [
  z.strictObject({ action: z.literal('take-out'), objectId: id }),
  z.strictObject({ action: z.literal('hand-over'), carrier: z.string().trim().min(1).max(80) }),
  z.strictObject({ action: z.literal('receive') }),
]);
export type ParcelAction = z.output<typeof parcelAction>;

export const objectFinding = z.enum(['present', 'missing', 'unexpected', 'damaged', 'undeclared']);

/** What was found when the parcel was opened, object by object. What the list does not name is found unexpected. */
export const reconcileParcel = z.strictObject({
  findings: z
    .array(
      handedOver.extend({
        found: objectFinding.exclude(['unexpected']),
        /** Shelf or tray from now on. */
        place: z.string().trim().min(1).max(80).optional(),
        note: z.string().trim().min(1).max(300).optional(),
      }),
    )
    .min(1)
    .max(100),
});
export type ReconcileParcel = z.output<typeof reconcileParcel>;

export const parcelView = z.object({
  id,
  version,
  direction: parcelDirection,
  state: parcelState,
  clinicId: id,
  clinicName: z.string(),
  laboratoryId: id,
  laboratoryName: z.string(),
  courierLegId: id.nullable(),
  carrier: z.string().nullable(),
  packedAt: instant,
  packedBy: z.string(),
  handedOverAt: instant.nullable(),
  receivedAt: instant.nullable(),
  reconciledAt: instant.nullable(),
  sentence: z.string(),
  objects: z.array(
    z.object({
      id,
      caseId: id,
      caseNumber: z.string(),
      code: z.string(),
      kind: objectKind,
      /** What the sender declared of its disinfection; null for what was found without having been announced. */
      declared: z.string().nullable(),
      /** Null until the parcel is reconciled. */
      found: objectFinding.nullable(),
      note: z.string().nullable(),
    }),
  ),
  caution: z.object({ text: z.string(), source: z.string() }),
});
export type ParcelView = z.output<typeof parcelView>;

export const parcelQuery = z.strictObject({
  direction: parcelDirection.optional(),
  state: parcelState.optional(),
  caseId: id.optional(),
  cursor: z.string().max(500).optional(),
  limit: z.coerce.number().int().min(1).max(100).default(20),
});
export type ParcelQuery = z.output<typeof parcelQuery>;

export const parcelPage = z.object({ items: z.array(parcelView), next: z.string().nullable() });
export type ParcelPage = z.output<typeof parcelPage>;
