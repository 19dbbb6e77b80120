import { z } from 'zod';
import { arch, id, instant, localDate, slug } from './primitives.js';
import { caseState } from './case.js';

const material = z.string().trim().min(1).max(120);
const lot = z.string().trim().min(1).max(60);

/** A lot of material that goes into a case at a laboratory step, as printed on its container. */
export const recordMaterialLot = z.strictObject({
  material,
  lot,
  /** Null where the maker prints none. */
  expiresOn: localDate.nullable(),
});
export type RecordMaterialLot = z.output<typeof recordMaterialLot>;

export const materialLotView = z.object({
  id,
  material: z.string(),
  lot: z.string(),
  expiresOn: localDate.nullable(),
  recordedAt: instant,
  recordedBy: z.string(),
  labStepId: id.nullable(),
  step: slug.nullable(),
  arches: z.array(arch),
  caseId: id,
  caseNumber: z.string(),
  caseState,
  /** Whom to call when the material is recalled; empty for a laboratory. */
  patientName: z.string(),
  phone: z.string().nullable(),
});
export type MaterialLotView = z.output<typeof materialLotView>;

/** Where a lot went, or what went into a case. */
export const materialLotQuery = z
  .strictObject({
    lot: lot.optional(),
    material: material.optional(),
    caseId: id.optional(),
    cursor: z.string().max(500).optional(),
    limit: z.coerce.number().int().min(1).max(100).default(20),
  })
  .refine((query) => query.lot !== undefined || query.caseId !== undefined, {
    path: ['lot'],
    error: 'a lot or a case to look for',
  });
export type MaterialLotQuery = z.output<typeof materialLotQuery>;

export const materialLotPage = z.object({ items: z.array(materialLotView), next: z.string().nullable() });
export type MaterialLotPage = z.output<typeof materialLotPage>;
