import { z } from 'zod';

/** Identifier of any record. */
export const id = z.uuid();

/** An instant: ISO 8601 in UTC, such as `2027-01-28T08:00:00Z`. */
export const instant = z.iso.datetime({ error: 'an instant in UTC such as 2027-01-28T08:00:00Z' });

/** A calendar date such as `2027-01-28`; there was no year 0. */
export const localDate = z.iso
  .date({ error: 'a date such as 2027-01-28' })
  .refine((date) => !date.startsWith('0000'), { error: 'a date such as 2027-01-28' });

/** A date of hours and closures; a year that was mistyped would be far away from all of them. */
export const plannedDate = localDate.refine((date) => date >= '2000-01-01' && date < '2200-01-01', {
  error: 'a date from 2000 to 2199 such as 2027-01-28',
});

/** A wall-clock time such as `09:20`. */
export const localTime = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'a time of day such as 09:20');

/** IANA zone name; whether it exists is checked where it is used. */
export const zoneName = z.string().min(1).max(64);

export const arch = z.enum(['upper', 'lower']);
export type Arch = z.output<typeof arch>;

/** A code of the case's pinned path version; the service checks that it is one. */
export const stageCode = z.string().regex(/^[A-Za-z][A-Za-z0-9-]{0,39}$/, 'a stage code of the path such as D2');

/** A code such as `jaw-relation`: lower-case words joined by hyphens. */
export const slug = z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'lower-case words joined by hyphens');

/** Free text a person typed. */
export const sentence = z.string().trim().min(1).max(500);

/** Integer version of an aggregate, sent as `ETag` and demanded back as `If-Match`. */
export const version = z.int().min(1);

/** One page of a list; `next` is the cursor of the following page, null on the last. */
export const page = <Item extends z.ZodType>(item: Item) =>
  z.object({ items: z.array(item), next: z.string().nullable() });

/** Days of the week, Monday first, as ISO 8601 numbers them. */
export const weekday = z.int().min(1).max(7);

/** Most bytes of a file that is taken in over the API, as the screens say before it is chosen. Project default, no source. */
export const MOST_FILE_BYTES = 5_000_000;
