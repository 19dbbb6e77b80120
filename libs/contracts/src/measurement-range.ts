import { z } from 'zod';
import { deliveredText } from './delivered.js';
import { instant, version } from './primitives.js';

const range = z.strictObject({ min: z.number(), max: z.number() });

/** A measurement's code, with a group of people or a region after a stroke: `border-thickness/post-dam`. */
const rangeKey = z.string().regex(/^[A-Za-z0-9-]{1,60}(\/[a-z0-9-]{1,40})?$/, 'a measurement, or measurement/group');
const limitCode = z.string().min(1).max(60);

/**
 * Everything that a practice decides for itself about ranges and limits; what is left out goes back to what is shipped.
 * A plausible range of physics is nobody's to change.
 */
export const changeMeasurementRanges = z.strictObject({
  usual: z.record(rangeKey, range),
  limits: z.record(limitCode, z.number()),
  /** Why; it stays on the record. */
  reason: z.string().trim().min(3).max(500),
});
export type ChangeMeasurementRanges = z.output<typeof changeMeasurementRanges>;

/** The practice's own settings in force, by which the browser judges as the service does. */
export const measurementOverlay = z.object({
  version,
  usual: z.record(z.string(), z.object({ min: z.number(), max: z.number() })),
  limits: z.record(z.string(), z.number()),
});

/** Usual ranges and limits: as shipped, with their source and standing, and the practice's own where it has any. */
export const measurementRangesView = z.object({
  version,
  usual: z.array(
    z.object({
      key: z.string(),
      name: deliveredText,
      /** A region or a group of people; null for the measurement as a whole. */
      group: z.string().nullable(),
      unit: z.string(),
      /** No range may reach past it. */
      plausible: z.object({ min: z.number(), max: z.number() }),
      /** Null where none is known. */
      shipped: z.object({ min: z.number(), max: z.number() }).nullable(),
      own: z.object({ min: z.number(), max: z.number() }).nullable(),
      source: z.string(),
      standing: z.string(),
    }),
  ),
  limits: z.array(
    z.object({
      code: z.string(),
      meaning: deliveredText,
      unit: z.string(),
      shipped: z.number(),
      own: z.number().nullable(),
      /** How far it may be moved; null: not at all. */
      adjustable: z.object({ min: z.number(), max: z.number() }).nullable(),
      source: z.string(),
      standing: z.string(),
    }),
  ),
  /** The latest first. */
  history: z.array(measurementOverlay.extend({ changedAt: instant, changedBy: z.string(), reason: z.string() })),
  note: z.string(),
});
export type MeasurementRangesView = z.output<typeof measurementRangesView>;
