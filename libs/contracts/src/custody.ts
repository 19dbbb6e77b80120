import { z } from 'zod';
import { arch, id, instant, sentence, version } from './primitives.js';

export const objectKind = z.enum([
  'impression',
  'cast',
  'base',
  'rim',
  'old-denture',
  'tracing-plate',
  'jaw-relation-record',
  'trial-denture',
  'denture',
  'scan-file',
  'other',
]);

export const objectState = z.enum([
  'expected',
  'in-use',
  'packed',
  'in-transit',
  'quarantined',
  'given-to-patient',
  'discarded',
  'lost',
]);

const place = z.string().trim().min(1).max(80);

/** Something that is kept from now on: the code to write on it is made by us. */
export const registerObject = z.strictObject({
  caseId: id,
  kind: objectKind,
  /** Null: it serves both arches. */
  arch: arch.nullable(),
  round: z.int().min(1).max(99).default(1),
  /** Who has it, the clinic or the laboratory; it is one of the person's own. */
  clinicId: id.optional(),
  laboratoryId: id.optional(),
  /** Shelf, box or tray. */
  place: place.nullable().default(null),
  useBy: instant.nullable().default(null),
});
export type RegisterObject = z.output<typeof registerObject>;

export const objectAction = z.discriminatedUnion('action', [
  /** It came, by other ways than a parcel: an expected object is there. */
  z.strictObject({ action: z.literal('book-in'), place: place.nullable().default(null) }),
  z.strictObject({ action: z.literal('move'), place }),
  z.strictObject({ action: z.literal('set-use-by'), useBy: instant.nullable(), reason: sentence }),
  z.strictObject({ action: z.literal('quarantine'), reason: sentence }),
  z.strictObject({ action: z.literal('release'), reason: sentence }),
  z.strictObject({ action: z.literal('give-to-patient') }),
  /** It goes to another clinic of its case, declared disinfected, and is expected there. */
  z.strictObject({ action: z.literal('forward'), clinicId: id }),
  z.strictObject({ action: z.literal('take-back'), place: place.nullable().default(null) }),
  z.strictObject({ action: z.literal('discard'), reason: sentence }),
  z.strictObject({ action: z.literal('declare-lost'), reason: sentence }),
  z.strictObject({ action: z.literal('find'), reason: sentence }),
]);
export type ObjectDeed = z.output<typeof objectAction>;

/** What, how and when; who says so is the person signed in. The maker's contact time and the practice's own rules decide. */
export const declareDisinfection = z.strictObject({
  agent: z.string().trim().min(1).max(80),
  method: z.enum(['immersion', 'spray', 'wipe', 'heat', 'other']),
  at: instant,
});
export type DeclareDisinfection = z.output<typeof declareDisinfection>;

export const objectView = z.object({
  id,
  version,
  caseId: id,
  caseNumber: z.string(),
  code: z.string(),
  kind: objectKind,
  arch: arch.nullable(),
  round: z.int(),
  state: objectState,
  stateReason: z.string().nullable(),
  holder: z.enum(['patient', 'clinic', 'courier', 'laboratory', 'nobody']),
  clinicId: id.nullable(),
  laboratoryId: id.nullable(),
  place: z.string().nullable(),
  useBy: instant.nullable(),
  /** The declaration that counts for its next dispatch; null when there is none since it came to where it is. */
  disinfection: z.object({ agent: z.string(), method: z.string().nullable(), at: instant, by: z.string() }).nullable(),
  /** Why nobody may work with it now; null when nothing stands against it. */
  notToBeUsed: z.string().nullable(),
  /** Why it may not be packed now; null when it may. */
  notToBePacked: z.string().nullable(),
  caution: z.object({ text: z.string(), source: z.string() }),
});
export type ObjectView = z.output<typeof objectView>;

export const objectQuery = z.strictObject({
  caseId: id.optional(),
  code: z.string().trim().min(1).max(120).optional(),
  state: objectState.optional(),
  cursor: z.string().max(500).optional(),
  limit: z.coerce.number().int().min(1).max(100).default(20),
});
export type ObjectQuery = z.output<typeof objectQuery>;

export const objectPage = z.object({ items: z.array(objectView), next: z.string().nullable() });
export type ObjectPage = z.output<typeof objectPage>;
