import { z } from 'zod';
import { deliveredText } from './delivered.js';
import { id, localDate, localTime, page, version, weekday, zoneName } from './primitives.js';

/** When whoever brings the patient can: a visit at the clinic lies within. At home nobody is brought. */
const escort = z
  .strictObject({ weekdays: z.array(weekday).min(1).max(7), from: localTime, to: localTime })
  .refine(({ from, to }) => from < to, { path: ['to'], error: 'a time after the one from which they can' });

/** What the patient asked for; a visit outside it is offered, marked "against a wish". */
export const wishes = z.strictObject({
  weekdays: z.array(weekday).max(7).default([]),
  from: localTime.nullable().default(null),
  to: localTime.nullable().default(null),
  /** Days on which the patient cannot come at all. */
  unavailableOn: z.array(localDate).max(200).default([]),
  /** Left out or null: nobody has to bring the patient. */
  escort: escort.nullable().optional(),
});
export type Wishes = z.output<typeof wishes>;

const patientFields = {
  givenName: z.string().trim().min(1).max(100),
  familyName: z.string().trim().min(1).max(100),
  birthOn: localDate,
  /** For published ranges that differ between women and men; null: not stated, and none of them is used. */
  sex: z.enum(['female', 'male']).nullable().default(null),
  mail: z.email().nullable().default(null),
  phone: z
    .string()
    .regex(/^\+?[0-9 ()./-]{5,30}$/, 'a telephone number such as +44 20 7946 0000')
    .nullable()
    .default(null),
  locale: z.string().min(2).max(20).default('en'),
  zone: zoneName,
  address: z.string().trim().max(300).nullable().default(null),
  /** How to get in for a visit at home: a key, a ward, a bell. */
  accessNote: z.string().trim().max(300).nullable().default(null),
  companionName: z.string().trim().max(100).nullable().default(null),
  companionPermitted: z.boolean().default(false),
  interpreter: z.string().trim().max(60).nullable().default(null),
  wheelchairRoom: z.boolean().default(false),
  chairMinutesPerDay: z.int().min(15).max(480).nullable().default(null),
  travelMinutes: z.int().min(0).max(240).default(0),
  reminderConsent: z.array(z.enum(['mail', 'phone'])).default([]),
};

export const createPatient = z.strictObject({ ...patientFields, wishes: wishes.prefault({}) });
export type CreatePatient = z.output<typeof createPatient>;

export const patientView = z.object({
  id,
  version,
  ...patientFields,
  wishes,
  cases: z.array(z.object({ id, number: z.string(), state: z.string(), title: deliveredText })),
});
export type PatientView = z.output<typeof patientView>;

export const patientQuery = z.strictObject({
  /** The beginning of the name, from any of its words on. */
  q: z.string().trim().max(100).optional(),
  birthOn: localDate.optional(),
  cursor: z.string().max(500).optional(),
  limit: z.coerce.number().int().min(1).max(100).default(20),
});
export type PatientQuery = z.output<typeof patientQuery>;

export const patientPage = page(patientView.omit({ cases: true }));
export type PatientPage = z.output<typeof patientPage>;
