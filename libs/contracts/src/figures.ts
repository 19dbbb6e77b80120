import { z } from 'zod';
import { id, localDate } from './primitives.js';

/** Whether there is enough to draw limits, which else would mislead. */
const standing = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('charted') }),
  /** Points alone are shown. */
  z.object({ kind: z.literal('too-few'), needed: z.int() }),
  /** Every point is the same: nothing to compare. */
  z.object({ kind: z.literal('no-spread') }),
]);

/** How often something happened, month by month. */
export const shareFigure = z.object({
  key: z.enum(['promise-kept', 'remake', 'missed-visit']),
  standing,
  /** Over all months; null where there is no point at all. */
  centre: z.number().nullable(),
  points: z.array(
    z.object({
      /** First day of the month. */
      monthOn: localDate,
      events: z.int(),
      size: z.int(),
      /** Three standard errors about the centre; null without limits. */
      lower: z.number().nullable(),
      upper: z.number().nullable(),
      /** By its exact tail, since the limits are rough for few cases. */
      isOutside: z.boolean(),
    }),
  ),
});
export type ShareFigure = z.output<typeof shareFigure>;

/** A value of each case, in the order in which they were finished. */
export const valueFigure = z.object({
  key: z.enum(['lead-time', 'visits-per-case']),
  unit: z.enum(['days', 'visits']),
  standing,
  centre: z.number().nullable(),
  lower: z.number().nullable(),
  upper: z.number().nullable(),
  points: z.array(
    z.object({ caseId: id, caseNumber: z.string(), on: localDate, value: z.number(), isOutside: z.boolean() }),
  ),
});
export type ValueFigure = z.output<typeof valueFigure>;

/** Minutes booked of minutes open. */
export const useFigure = z.object({
  kind: z.enum(['chair', 'clinician', 'work-centre']),
  id,
  name: z.string(),
  place: z.string(),
  bookedMinutes: z.int(),
  openMinutes: z.int(),
});
export type UseFigure = z.output<typeof useFigure>;

/** How the practice does, at the actor's clinics. */
export const figuresView = z.object({
  today: localDate,
  /** Cases and visits from this day on are counted. */
  sinceOn: localDate,
  shares: z.array(shareFigure),
  values: z.array(valueFigure),
  use: z.object({ fromOn: localDate, lastOn: localDate, rows: z.array(useFigure) }),
});
export type FiguresView = z.output<typeof figuresView>;
