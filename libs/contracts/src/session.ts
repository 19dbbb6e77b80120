import { z } from 'zod';
import { id } from './primitives.js';

export const role = z.enum(['front-desk', 'lab', 'clinician', 'manager', 'administrator']);
export type Role = z.output<typeof role>;

export const signIn = z.strictObject({
  signInName: z.string().trim().min(1).max(200),
  password: z.string().min(1).max(200),
});
export type SignIn = z.output<typeof signIn>;

/** Who is signed in, and what of the organisation they may see. */
export const sessionView = z.object({
  userId: id,
  name: z.string(),
  role,
  organisationId: id,
  organisationName: z.string(),
  clinicIds: z.array(id),
  laboratoryIds: z.array(id),
  /** The clinician's own resource, for "my day"; null for everyone else. */
  practitionerId: id.nullable(),
  locale: z.string(),
  /** True where mail is caught instead of sent and the clock can be moved on. */
  isDemonstration: z.boolean(),
});
export type SessionView = z.output<typeof sessionView>;
