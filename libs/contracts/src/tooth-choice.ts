import { z } from 'zod';
import { instant, version } from './primitives.js';

const toothWidth = z.strictObject({
  target: z.enum(['six-anterior-width', 'central-incisor-width', 'intercanine-distance']),
  object: z.enum(['old-denture', 'photograph', 'cast', 'natural-teeth', 'rim', 'set-up']),
  /** Refused where no tooth is so wide, with what would be accepted. */
  valueMm: z.number(),
});

const decidedBy = z.enum(['patient', 'companion-with-permission', 'legal-representative']);

/** The choice of teeth as it stands after this visit; a text that is left empty says nothing. */
export const chooseTeeth = z.strictObject({
  /** The patient's wish in the practice's own words. The laboratory reads it: no names. */
  wish: z.string().trim().max(1000),
  arrangement: z.string().trim().max(120),
  shade: z.string().trim().max(60),
  mould: z.string().trim().max(60),
  /** Null while nobody has decided. */
  decidedBy: decidedBy.nullable(),
  measured: z.array(toothWidth).max(12),
});
export type ChooseTeeth = z.output<typeof chooseTeeth>;

const words = z.array(z.string().trim().min(1).max(60)).max(100);

/** The practice's own list of shades, moulds and arrangements; anything else may be typed all the same. */
export const changeToothList = z.strictObject({ shades: words, moulds: words, arrangements: words });
export type ChangeToothList = z.output<typeof changeToothList>;

export const toothListView = changeToothList.extend({ version });
export type ToothListView = z.output<typeof toothListView>;

export const toothChoiceView = chooseTeeth.extend({
  version,
  /** Null while nothing was chosen. */
  recordedAt: instant.nullable(),
  recordedBy: z.string().nullable(),
  list: changeToothList,
});
export type ToothChoiceView = z.output<typeof toothChoiceView>;
