import { z } from 'zod';
import { deliveredText } from './delivered.js';
import { MOST_FILE_BYTES, arch, id, instant, localDate, slug, zoneName } from './primitives.js';

/** What the signed-in person's screens choose from: clinics, people, laboratories and published paths. */
export const practiceView = z.object({
  today: localDate,
  clinics: z.array(
    z.object({
      id,
      name: z.string(),
      zone: zoneName,
      chairs: z.array(z.object({ id, label: z.string() })),
      clinicians: z.array(z.object({ id, name: z.string(), skills: z.array(slug) })),
    }),
  ),
  laboratories: z.array(
    z.object({
      id,
      name: z.string(),
      zone: zoneName,
      workCentres: z.array(z.object({ id, code: slug, name: z.string(), places: z.int() })),
    }),
  ),
  /** Laboratories of their own, which work is ordered from; none for who works in a laboratory. */
  orderedFrom: z.array(z.object({ id, name: z.string() })),
  paths: z.array(
    z.object({
      versionId: id,
      code: slug,
      version: z.int(),
      title: deliveredText,
      arches: z.array(arch),
      visits: z.int(),
    }),
  ),
});
export type PracticeView = z.output<typeof practiceView>;

/** Counted as the file was: a letter beyond ASCII is one of text and several bytes. */
function isFileSized(text: string): boolean {
  return text.length <= MOST_FILE_BYTES && new TextEncoder().encode(text).length <= MOST_FILE_BYTES;
}

/** Busy times of one chair or clinician from an iCalendar feed; importing the same feed again changes nothing twice. */
export const importCalendar = z.strictObject({
  /** Names the feed, so that a later import of it replaces this one. */
  source: z.string().trim().min(1).max(500),
  /** The feed itself (RFC 5545); the request as a whole may have 10 MiB. */
  calendar: z.string().min(1, 'a calendar file').refine(isFileSized, 'a file of at most 5 MB; export a shorter period'),
  /** Tells what would happen and keeps nothing of it. */
  isTrial: z.boolean().default(false),
});
export type ImportCalendar = z.output<typeof importCalendar>;

export const importedCalendar = z.object({
  resourceId: id,
  busy: z.int(),
  unchanged: z.int(),
  /** Busy times of an earlier import that the feed no longer has. */
  gone: z.int(),
  /** Busy times that fall on booked or held time. That time keeps its place until a person decides. */
  conflicts: z.int(),
  /** Busy times, new with this import, that have repairs looked for since they fall on booked visits to come. */
  disturbances: z.int(),
  /** The booked and held times that they fall on. */
  booked: z.array(z.object({ startsAt: instant, endsAt: instant, appointmentId: id.nullable() })),
  problems: z.array(z.object({ line: z.int(), component: z.string(), problem: z.string() })),
});
export type ImportedCalendar = z.output<typeof importedCalendar>;

/** The demo's clock: where it stands, and how to move it forward. */
export const demoClock = z.strictObject({ now: instant });
export type DemoClock = z.output<typeof demoClock>;
