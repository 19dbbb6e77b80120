import type { Comparison } from '@archwright/screening';
import type { StageValue } from './stage-values.js';

/** Other patients whose value, or whose change from one visit to the next, a new one is held beside. */
export const VALUE_GROUPS = ['own-change', 'clinic', 'organisation'] as const;
export type ValueGroup = (typeof VALUE_GROUPS)[number];

/** A new value, what came before it, and whom it is compared with. */
export interface Compared {
  readonly mine: StageValue;
  /** The patient's value at the visit before; null at the first. */
  readonly before: StageValue | null;
  readonly comparisons: readonly Comparison<ValueGroup>[];
}

/**
 * Each other patient counts once, with the last value: who comes often does not shift the group. A patient's own history
 * is mostly too short for a spread of its own, so its last change is held beside the last changes of others.
 *
 * @param values of the subject up to the new one, oldest first
 * @returns null when the stage's value is no longer that of the capture
 */
export function compareValue(values: readonly StageValue[], captureId: string): Compared | null {
  const mine = values.find((each) => each.captureId === captureId);
  if (mine === undefined) return null;
  const others = new Map<string, { last: StageValue; before: StageValue | null }>();
  let before: StageValue | null = null;
  for (const each of values) {
    if (each === mine) continue;
    if (each.patientId === mine.patientId) before = each;
    else others.set(each.patientId, { last: each, before: others.get(each.patientId)?.last ?? null });
  }
  const last = [...others.values()].map((other) => other.last);
  const inClinic = last.filter(({ clinicId }) => clinicId === mine.clinicId);
  const changes = [...others.values()].flatMap((other) =>
    other.before === null ? [] : [other.last.value - other.before.value],
  );
  const valuesOf = (of: readonly StageValue[]) => of.map(({ value }) => value);
  return {
    mine,
    before,
    comparisons: [
      ...(before === null ? [] : [{ group: 'own-change' as const, value: mine.value - before.value, others: changes }]),
      { group: 'clinic', value: mine.value, others: valuesOf(inClinic) },
      // With one clinic the organisation is the same people again.
      ...(inClinic.length === last.length
        ? []
        : [{ group: 'organisation' as const, value: mine.value, others: valuesOf(last) }]),
    ],
  };
}
