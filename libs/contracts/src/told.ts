import { z } from 'zod';
import { deliveredText } from './delivered.js';
import { instant, localDate, zoneName } from './primitives.js';

/** What the service tells in one sentence on top of a screen, by code, as ICU messages in English. */
export const TOLD = {
  'case-paused':
    'Paused{because, select, none {.} other {: {because}}}{again, select, none {} other { To be looked at again on {again}.}}',
  'case-transferred': 'Handed over{because, select, none {.} other {: {because}}}',
  'case-abandoned': 'Given up{because, select, none {.} other {: {because}}}',
  'case-closed': 'Closed. Recalls stay due.',
  'case-ended-by-death': 'The patient has died. Everything was stopped.',
  'case-to-decide': 'To be decided at "{title}": {reason}',
  'case-held': 'Times are held until {until}: confirm them or give them back.',
  'case-under-way': 'Under way: {title}.',
  'case-missed': 'Missed: {title}, {when}. It needs a new time.',
  'case-next': 'Next: {title}, {when}, {clinic}.{placement, select, none {} other { Placement on {placement}.}}',
  'case-placed': 'Placed on {on}. Later reviews and recalls are due, not booked.',
  'case-nothing-left': 'Nothing is left to book. Later reviews and recalls are due, not booked.',
  'case-enquiry': 'Enquiry: nothing is booked yet. Ask for offers for "{title}".',
  'case-not-booked': 'Not booked: "{title}" and what follows. Ask for offers.',
  'day-empty': 'No visits on this day.',
  day: '{visits, plural, one {# visit} other {# visits}}{parts, select, none {} other {: {parts}}}.',
  'day-arrived': '{n} waiting',
  'day-in-progress': '{n} under way',
  'day-completed': '{n} finished',
  'day-missed': '{n} missed',
  'day-not-firm': '{n} not yet firm',
  'board-may-go-on': '{n} may go on',
  'board-check-first': '{n} to check first',
  'board-decide': '{n} to decide',
  'board-not-ready': '{n} not ready',
  load: '{late, plural, =0 {Nothing is at risk of being late} other {# at risk of being late}}; {over, select, none {no bench is over its open time} other {over its open time: {over}}}{more, plural, =0 {} other {, and # more}}.',
  'load-over': '{name} on {on}',
  'dispatch-empty': 'No work on this day.',
  'dispatch-finished': 'Everything is finished.',
  dispatch: '{steps, plural, one {# step} other {# steps}} to do, {waiting} of them waiting, {late} late.',
  'dispatch-order':
    'Least slack first: the time left between the expected end of the work and its leaving for the clinic. Equal slack goes by planned start. Work that waits for an answer comes last of the unfinished: its clock stands still.',
  'calls-none': 'No calls to make.',
  calls: '{calls, plural, one {# call} other {# calls}} to make, {overdue} due now.',
} as const;
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
