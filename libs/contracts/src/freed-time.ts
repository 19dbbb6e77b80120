import { z } from 'zod';
import { deliveredText } from './delivered.js';
import { id, instant, localDate, stageCode, zoneName } from './primitives.js';
import { told } from './told.js';

/** Time of one person in one clinic that has become free, such as that of a visit that was cancelled. */
export const freedTimeQuery = z.strictObject({
  clinicId: id,
  clinicianId: id,
  startsAt: instant,
  endsAt: instant,
  limit: z.coerce.number().int().min(1).max(20).default(5),
});
export type FreedTimeQuery = z.output<typeof freedTimeQuery>;

/** An open case with a visit that could use the time, and what it would gain. */
export const freedTimeTaker = z.object({
  caseId: id,
  caseNumber: z.string(),
  patientId: id,
  patientName: z.string(),
  /** Null when no number is known. */
  phone: z.string().nullable(),
  stage: stageCode,
  title: deliveredText,
  /** The visit that would move, to be sent to `POST /ripples/move` with `startsAt`, `clinicianId` and the aim `earliest`. */
  appointmentId: id,
  /** Its present start. */
  before: instant,
  startsAt: instant,
  endsAt: instant,
  /** Local days between `before` and `startsAt`. */
  visitDaysEarlier: z.int(),
  /** Visits of the case that move, this one included; nobody else's does. */
  movedVisits: z.int(),
  /** Null, as `deliveryOn`, when no denture is placed any more or its visit is not booked. */
  deliveryBefore: localDate.nullable(),
  deliveryOn: localDate.nullable(),
  deliveryDaysEarlier: z.int(),
  /** What is gained and what it costs, in words. */
  sentence: z.string(),
  told,
});
export type FreedTimeTaker = z.output<typeof freedTimeTaker>;

/** Who gains most by taking the time: earliest placement first, then the visit itself, then the fewest moved visits. */
export const freedTimeView = z.object({
  zone: zoneName,
  takers: z.array(freedTimeTaker),
  /** Cases whose next visit could lie in this time by its length and skills and was looked at. */
  casesLookedAt: z.int(),
  /** Further ones that were left out; those whose next visit is furthest away are looked at first. */
  casesLeftOut: z.int(),
});
export type FreedTimeView = z.output<typeof freedTimeView>;
