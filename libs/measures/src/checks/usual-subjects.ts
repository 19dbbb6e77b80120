import { MEASUREMENTS } from '../catalogue/catalogue.js';
import type { GroupRange, NumberMeasurement } from '../measurement.js';
import type { ClosedRange } from '../standing.js';

/** One usual range that a practice may make its own: of a measurement, or of one group of people or one region. */
export interface UsualSubject {
  /** The measurement's code, with the group after a stroke: `border-thickness/post-dam`. */
  readonly key: string;
  readonly measurement: NumberMeasurement;
  readonly group: string | null;
  /** As the catalogue has it; null where it has none. */
  readonly shipped: ClosedRange | null;
}

/** Each group range names one thing: a region, a skeletal class or a sex. */
export function groupOf({ region, skeletalClass, sex }: GroupRange): string {
  return region ?? skeletalClass ?? sex ?? '';
}

export const usualKey = (measurement: NumberMeasurement, group: GroupRange | null): string =>
  group === null ? measurement.code : `${measurement.code}/${groupOf(group)}`;

/** Every usual range there is to change, in the order of the catalogue. */
export const USUAL_SUBJECTS: readonly UsualSubject[] = MEASUREMENTS.flatMap((measurement): UsualSubject[] => {
  if (measurement.kind !== 'number' && measurement.kind !== 'count') return [];
  // What is computed and has no range is judged by rules of its own, or by none.
  if (measurement.derived === true && measurement.usual === null) return [];
  return [null, ...(measurement.usualByGroup ?? [])].map((group) => ({
    key: usualKey(measurement, group),
    measurement,
    group: group === null ? null : groupOf(group),
    shipped: group === null ? measurement.usual : group.range,
  }));
});
