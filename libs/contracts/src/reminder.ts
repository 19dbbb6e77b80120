import { z } from 'zod';
import { told } from './told.js';
import { id, instant, zoneName } from './primitives.js';

export const reminderView = z.object({
  id,
  appointmentId: id,
  /** Of the visit's clinic; the desk reads times on its wall. */
  zone: zoneName,
  channel: z.enum(['mail', 'phone']),
  leadMinutes: z.int(),
  dueAt: instant,
  state: z.enum(['scheduled', 'sent', 'withdrawn', 'failed']),
  sentAt: instant.nullable(),
});
export type ReminderView = z.output<typeof reminderView>;

export const callTaskView = z.object({
  id,
  version: z.int(),
  patientId: id,
  patientName: z.string(),
  phone: z.string().nullable(),
  caseId: id.nullable(),
  /** Of the clinic that calls. */
  zone: zoneName,
  reason: z.string(),
  told,
  state: z.enum(['open', 'done']),
  dueAt: instant,
  attempts: z.array(z.object({ at: instant, outcome: z.string(), by: z.string() })),
});
export type CallTaskView = z.output<typeof callTaskView>;

export const callList = z.object({ sentence: z.string(), told, items: z.array(callTaskView) });
export type CallList = z.output<typeof callList>;

export const recordCall = z.strictObject({
  outcome: z.enum(['reached', 'no-answer', 'left-message', 'asks-to-move', 'declined']),
});
export type RecordCall = z.output<typeof recordCall>;

/** One message caught by the demo's built-in mail catcher. */
export const caughtMail = z.object({
  to: z.string(),
  subject: z.string(),
  text: z.string(),
  receivedAt: instant,
  messageId: z.string(),
  calendar: z.string().nullable(),
});
export type CaughtMail = z.output<typeof caughtMail>;
