import { z } from 'zod';
import { arch, id, localDate, slug, zoneName } from './primitives.js';

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
  paths: z.array(
    z.object({
      versionId: id,
      code: slug,
      version: z.int(),
      title: z.string(),
      arches: z.array(arch),
      visits: z.int(),
    }),
  ),
});
export type PracticeView = z.output<typeof practiceView>;
