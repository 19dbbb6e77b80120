import { z } from 'zod';

const changeDraft = z.object({
  what: z.enum(['move', 'cancel']),
  /** A start of the list, `other` with a day and a time, or nothing yet: the first of the list. */
  move: z.object({ start: z.string(), date: z.string(), time: z.string() }),
  /** The day from which the patient can come again; empty: any other time will do. */
  cancel: z.object({ then: z.enum(['replan', 'drop-rest']), againOn: z.string() }),
  reason: z.string(),
});

/** What is to be done with a visit, as it is typed. */
export type ChangeDraft = z.output<typeof changeDraft>;
export type MoveDraft = ChangeDraft['move'];
export type CancelDraft = ChangeDraft['cancel'];

/** Under which it is kept until it is done. */
export const changeKey = (appointmentId: string): string => `change.${appointmentId}`;

/** A draft that the browser kept over a reload; null when it is none. */
export const readChangeDraft = (kept: unknown): ChangeDraft | null => changeDraft.safeParse(kept).data ?? null;
