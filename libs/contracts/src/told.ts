import { z } from 'zod';
import { deliveredText } from './delivered.js';
import { instant, localDate, zoneName } from './primitives.js';
import { TOLD } from './told-sentences.js';

export type ToldCode = keyof typeof TOLD;

const code = z.enum(Object.keys(TOLD) as ToldCode[]);

/** What a place in a sentence is filled with; `none` where there is nothing to say. */
const plain = z.union([
  z.string(),
  z.number(),
  /** A day and time as the wall of the zone has it. */
  z.strictObject({ moment: instant, zone: zoneName }),
  z.strictObject({ day: localDate }),
  z.strictObject({ title: deliveredText }),
]);
const part = z.strictObject({ code, values: z.record(z.string(), plain) });
const filling = z.union([plain, z.strictObject({ list: z.array(part).min(1) })]);
export type Filling = z.output<typeof filling>;

/** A sentence by its code: whoever shows it says it in the language of the page. */
export const told = z.strictObject({ code, values: z.record(z.string(), filling) });
export type Told = z.output<typeof told>;

/** A sentence of the service, in English and by its code. */
export const said = z.object({ sentence: z.string(), told });
export type Said = z.output<typeof said>;
