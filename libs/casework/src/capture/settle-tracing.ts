import type { TracingGiven } from '@archwright/contracts';
import type { TracingEntry } from '@archwright/measures';
import { evaluateTracing, toTracingEntry, type Evaluation, type NoApex, type TracedPoint } from '@archwright/tracing';

/** What the checks judge, with the circumstances that only the record tells. */
export type KeptEntry = TracingEntry & Pick<TracingGiven, 'stylusOn' | 'view' | 'posture'>;

/** A tracing as it is kept: findings as entered, or computed from the points that were drawn. */
export interface SettledTracing {
  readonly entry: KeptEntry;
  readonly points: readonly TracedPoint[] | null;
  readonly evaluation: Evaluation | NoApex | null;
}

/** @throws {TracingError} when the points are no tracing */
export function settleTracing({ points, apex, ...given }: TracingGiven): SettledTracing {
  if (points === undefined) {
    if (apex === undefined) throw new Error('The contract asks for an apex where no points are given.');
    return { entry: { ...given, apex }, points: null, evaluation: null };
  }
  const evaluation = evaluateTracing({ points, stylusOn: given.stylusOn, view: given.view });
  return { entry: { ...given, ...toTracingEntry(evaluation, given) }, points, evaluation };
}
