import { z } from 'zod';
import { id, instant } from './primitives.js';

/** Pictures are made smaller before they are sent; this bounds what is sent by other ways. */
export const MOST_PHOTOGRAPH_BYTES = 3_000_000;
/** Three bytes make four letters. */
const MOST_LETTERS = Math.ceil(MOST_PHOTOGRAPH_BYTES / 3) * 4;

/** A photograph of a visit, as a JPEG file without any note of device, time or place in it. */
export const keepPhotograph = z.strictObject({
  caption: z.string().trim().min(1).max(200),
  jpeg: z.base64('a JPEG file in base 64').min(1).max(MOST_LETTERS),
});
export type KeepPhotograph = z.output<typeof keepPhotograph>;

export const removePhotograph = z.strictObject({ reason: z.string().trim().min(1).max(500) });
export type RemovePhotograph = z.output<typeof removePhotograph>;

export const photographView = z.object({
  id,
  stageId: id,
  caption: z.string(),
  widthPx: z.int(),
  heightPx: z.int(),
  recordedAt: instant,
  recordedBy: z.string(),
  /** Of one that was taken away: its picture is gone. */
  removed: z.object({ at: instant, by: z.string(), reason: z.string() }).nullable(),
});
export type PhotographView = z.output<typeof photographView>;

export const photographList = z.object({ items: z.array(photographView) });
export type PhotographList = z.output<typeof photographList>;
