import { z } from 'zod';
import { deliveredText } from './delivered.js';
import { verdictView } from './capture.js';
import { arch, instant } from './primitives.js';

/** What the checks said of one stage over time, the latest first; the ones in force have no end. */
export const verdictHistory = z.object({
  items: z.array(
    verdictView.extend({
      /** What the rule was applied to: a measurement, a side, a region. */
      about: z.array(z.string()),
      arch: arch.nullable(),
      supersededAt: instant.nullable(),
    }),
  ),
  note: z.string(),
});
export type VerdictHistory = z.output<typeof verdictHistory>;

/** How each rule fares: counted per rule, never per person. */
export const checkFigures = z.object({
  items: z.array(
    z.object({
      rule: z.string(),
      name: deliveredText,
      version: z.int(),
      stagesJudged: z.int(),
      /** Stages at which it failed at any time. */
      stagesFailed: z.int(),
      /** Gates that a clinician set aside in writing while it failed. */
      setAside: z.int(),
      /** Late findings after which a clinician went on. */
      wentOn: z.int(),
      /** Alerts that it raised and a person dismissed. */
      alertsDismissed: z.int(),
    }),
  ),
  note: z.string(),
});
export type CheckFigures = z.output<typeof checkFigures>;
