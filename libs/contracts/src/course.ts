import { z } from 'zod';
import { appointmentState } from './appointment.js';
import { tracingView } from './capture.js';
import { caseLabStep, stageState } from './case.js';
import { deliveredText } from './delivered.js';
import { photographView } from './photograph.js';
import { arch, id, instant, slug, stageCode } from './primitives.js';

/** What was told first beside what came of it; each null where it was not planned so, or has not happened. */
const plannedAndHappened = z.object({
  /** The start of the first plan that was confirmed; null for what that plan did not have. */
  firstPlannedAt: instant.nullable(),
  /** As it is planned now, or was last. */
  plannedAt: instant.nullable(),
  startedAt: instant.nullable(),
  finishedAt: instant.nullable(),
});

const courseVisit = plannedAndHappened.extend({
  stageId: id,
  code: stageCode,
  title: deliveredText,
  round: z.int(),
  state: stageState,
  appointmentState: appointmentState.nullable(),
  clinicianName: z.string().nullable(),
  tracings: z.array(tracingView),
  /** Those that were taken away are left out. */
  photographs: z.array(photographView),
});

const courseLabStep = plannedAndHappened.extend(
  caseLabStep.pick({ id: true, title: true, arches: true, round: true, afterStage: true, state: true }).shape,
);

/** A number in the unit of its measurement, a grade or class by its name, a finding that is there or not. */
const courseValue = z.union([z.number(), z.boolean(), z.object({ label: deliveredText })]);

/** One measurement of one place, taken in one way, at the visits at which it was taken. */
const courseMeasurement = z.object({
  code: slug,
  name: deliveredText,
  unit: z.string().nullable(),
  arch: arch.nullable(),
  side: z.enum(['right', 'left']).nullable(),
  region: z.string().nullable(),
  /** What has to match to compare, such as the marks that a length was read between. */
  method: z.record(z.string(), z.string()),
  values: z.array(z.object({ stageId: id, value: courseValue, at: instant })),
});

/** The course of a case: first plan against what happened, measurements over its visits, tracings, photographs. */
export const caseCourse = z.object({
  number: z.string(),
  zone: z.string(),
  visits: z.array(courseVisit),
  labSteps: z.array(courseLabStep),
  measurements: z.array(courseMeasurement),
});
export type CaseCourse = z.output<typeof caseCourse>;
