import { z } from 'zod';
import { id, instant, zoneName } from './primitives.js';

const itineraryVisit = z.object({
  appointmentId: id,
  startsAt: instant,
  endsAt: instant,
  /** Of the visit's clinic. */
  zone: zoneName,
  clinicName: z.string(),
  clinicPhone: z.string(),
  /** The clinic's, or the patient's own for a visit at home. */
  address: z.string(),
  /** Kept for the patient, but not firm yet. */
  isProvisional: z.boolean(),
});

/** How the patient is told: by mail when they agreed to it and the address is known, else by a call. */
const wayToTell = z.enum(['mail', 'call']);

/** The visits of a case that are still to come, as they are handed to the patient. */
export const itineraryView = z.object({ way: wayToTell, visits: z.array(itineraryVisit) });
export type ItineraryView = z.output<typeof itineraryView>;

/** That the patient is told once more, and how. */
export const itinerarySent = z.object({ way: wayToTell });
export type ItinerarySent = z.output<typeof itinerarySent>;
