import { z } from 'zod';
import { id } from './primitives.js';

/** That something changed. What it has become is fetched by whoever may see it. */
export const change = z.object({
  /** Such as `case`, `stage`, `call-task`, `patient`. */
  kind: z.string(),
  /** Null where it would name what is not the listener's: something of that kind changed. */
  id: id.nullable(),
  /** Null when the service acted by itself. */
  actorId: id.nullable(),
});
export type Change = z.output<typeof change>;

/** One message of the stream of changes; its id is the position to go on from. */
export const changeNews = z.object({
  changes: z.array(change),
  /** Too much happened to tell it one by one: whatever is on a screen may be out of date. */
  isEverything: z.boolean(),
});
export type ChangeNews = z.output<typeof changeNews>;

/** A position in the stream, as an earlier message gave it. */
export const changePosition = z.string().regex(/^\d{1,18}$/);

/** Where to go on after the screen was away; a reconnecting browser says it in `Last-Event-ID` instead, which then counts. */
export const changesQuery = z.strictObject({ after: changePosition.optional() });
export type ChangesQuery = z.output<typeof changesQuery>;
