import { z } from 'zod';
import { localTime, version } from './primitives.js';

/** From half an hour to 30 days before a visit. */
const leads = z
  .array(z.int().min(30).max(43_200))
  .max(6)
  .refine((list) => new Set(list).size === list.length, 'each lead time once');

const ownLine = z.string().trim().max(300);

/** What a practice decides about reminders, holds, recalls and screening. */
export const practiceRules = z.strictObject({
  /** How long before a visit mails leave and calls are due, in minutes. */
  mailLeadMinutes: leads,
  phoneLeadMinutes: leads,
  /** Nothing is sent between these local times of the patient; may span midnight. */
  quietHours: z.strictObject({ from: localTime, to: localTime }),
  phoneHoldMinutes: z.int().min(1).max(240),
  provisionalHoldMinutes: z.int().min(15).max(43_200),
  /** Null: as the treatment path says. */
  recallMonths: z.int().min(1).max(60).nullable(),
  /** Of so many ordinary values one is pointed out by chance. */
  valuesPerFalseAlarm: z.int().min(100).max(100_000),
  /** A line of the practice's own at the end of each reminder, by language; empty: none. */
  ownLines: z.strictObject({ en: ownLine, de: ownLine, ar: ownLine }),
});
export type PracticeRules = z.output<typeof practiceRules>;

export const practiceRulesView = z.object({
  version,
  rules: practiceRules,
  /** A reminder as a patient gets it, in every language. */
  samples: z.array(z.object({ language: z.enum(['en', 'de', 'ar']), subject: z.string(), text: z.string() })),
});
export type PracticeRulesView = z.output<typeof practiceRulesView>;
