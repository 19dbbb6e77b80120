import { UnknownMeasurementError } from '../errors.js';
import type { Measurement, MilestoneKind } from '../measurement.js';
import { BASE_MEASUREMENTS } from './bases.js';
import { FUNCTION_MEASUREMENTS } from './function.js';
import { GRADE_MEASUREMENTS } from './grades.js';
import { PLANE_MEASUREMENTS } from './plane.js';
import { TRACING_MEASUREMENTS } from './tracing.js';
import { VERTICAL_MEASUREMENTS } from './vertical.js';
import { WIDTH_MEASUREMENTS } from './widths.js';

/** Everything that is measured, graded or recorded as a finding, in the order in which a visit asks for it. */
export const MEASUREMENTS: readonly Measurement[] = [
  ...VERTICAL_MEASUREMENTS,
  ...PLANE_MEASUREMENTS,
  ...BASE_MEASUREMENTS,
  ...WIDTH_MEASUREMENTS,
  ...GRADE_MEASUREMENTS,
  ...FUNCTION_MEASUREMENTS,
  ...TRACING_MEASUREMENTS,
];

const byCode = new Map(
  MEASUREMENTS.flatMap((measurement) =>
    [measurement.code, measurement.abbreviation].flatMap((code) =>
      code === undefined ? [] : [[code.toLowerCase(), measurement] as const],
    ),
  ),
);

/**
 * The definition behind a code or its short form (`VDR`), upper and lower case alike.
 *
 * @throws {UnknownMeasurementError} naming codes that contain what was typed
 */
export function measurementByCode(code: string): Measurement {
  const wanted = code.trim().toLowerCase();
  const found = byCode.get(wanted);
  if (found !== undefined) return found;
  const nearby = wanted.length < 3 ? [] : MEASUREMENTS.map((one) => one.code).filter((known) => known.includes(wanted));
  throw new UnknownMeasurementError(code, nearby.slice(0, 5));
}

/** What is captured at any of these kinds of visit, computed values left out. */
export function measurementsCapturedAt(milestones: readonly MilestoneKind[]): readonly Measurement[] {
  return MEASUREMENTS.filter(
    (measurement) => measurement.derived !== true && measurement.capturedAt.some((kind) => milestones.includes(kind)),
  );
}
