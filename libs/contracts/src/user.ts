import { z } from 'zod';
import { id, instant, version } from './primitives.js';
import { role } from './session.js';

/** Length is what makes a password hard to guess (NIST SP 800-63B, 3.1.1: at least 15 where nothing else guards). */
const newPassword = z.string().min(15, 'at least 15 characters').max(200);

/** What a person may do, and where. Empty clinics or laboratories mean none, not all. */
const userFields = {
  name: z.string().trim().min(1, 'a name').max(120),
  role,
  mail: z.email('an address such as name@example.org, or none').nullable(),
  clinicIds: z.array(id).max(100),
  laboratoryIds: z.array(id).max(100),
  /** The clinician's own calendar; null for everyone else. */
  practitionerId: id.nullable(),
};

export const addUser = z.strictObject({
  ...userFields,
  signInName: z
    .string()
    .trim()
    .toLowerCase()
    .regex(/^[^\s]{3,200}$/, '3 to 200 characters without a space, such as a mail address'),
  /** Handed over by a person; whoever gets it sets another one. */
  password: newPassword,
});
export type AddUser = z.output<typeof addUser>;

export const changeUser = z.strictObject(userFields);
export type ChangeUser = z.output<typeof changeUser>;

export const setUserActive = z.strictObject({ isActive: z.boolean() });
export type SetUserActive = z.output<typeof setUserActive>;

export const resetPassword = z.strictObject({ password: newPassword });
export type ResetPassword = z.output<typeof resetPassword>;

/** By the person: the other sessions of theirs end. */
export const changeOwnPassword = z.strictObject({ current: z.string().min(1).max(200), next: newPassword });
export type ChangeOwnPassword = z.output<typeof changeOwnPassword>;

export const userView = z.object({
  ...userFields,
  mail: z.string().nullable(),
  id,
  version,
  signInName: z.string(),
  isActive: z.boolean(),
  /** Null: not signed in at present. */
  lastSeenAt: instant.nullable(),
});
export type UserView = z.output<typeof userView>;

export const userList = z.object({ items: z.array(userView) });
export type UserList = z.output<typeof userList>;
