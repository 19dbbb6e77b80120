import type { TracedPointGiven, TracingGiven } from '@archwright/contracts';
import type { TracingEntry } from '@archwright/measures';
import {
  evaluateTracing,
  toTracingEntry,
  TracingError,
  type Evaluation,
  type NoApex,
  type TracingInput,
} from '@archwright/tracing';

export type DrawnPoint = TracedPointGiven;
export type Phase = DrawnPoint['phase'];

/** How the plate is looked at, which decides what its left and its forward are. */
export type Seen = Pick<TracingInput, 'stylusOn' | 'view'>;

/** What the points say, or why they say nothing yet. */
export type Evaluated = { readonly evaluation: Evaluation | NoApex } | { readonly problem: string };

/** The same points are asked for with every letter that is typed elsewhere on the screen. */
const known = new WeakMap<readonly DrawnPoint[], Map<string, Evaluated>>();

export function evaluateDrawn(points: readonly DrawnPoint[], { stylusOn, view }: Seen): Evaluated {
  const key = `${stylusOn} ${view}`;
  const bySeen = known.get(points) ?? new Map<string, Evaluated>();
  known.set(points, bySeen);
  const evaluated = bySeen.get(key) ?? evaluateAnew({ points, stylusOn, view });
  bySeen.set(key, evaluated);
  return evaluated;
}

function evaluateAnew(input: TracingInput): Evaluated {
  try {
    return { evaluation: evaluateTracing(input) };
  } catch (error) {
    if (error instanceof TracingError) return { problem: error.message };
    throw error;
  }
}

/** A drawn tracing as the checks judge it, as the service would; nothing of one that can't be evaluated yet. */
export function entryOfDrawn({ points, ...given }: TracingGiven): TracingEntry[] {
  const evaluated = evaluateDrawn(points ?? [], given);
  return 'problem' in evaluated ? [] : [toTracingEntry(evaluated.evaluation, given)];
}

/** What reads drawings. Most visits have none: it is fetched once one is begun. */
export interface Evaluator {
  readonly evaluateDrawn: typeof evaluateDrawn;
  readonly entryOfDrawn: typeof entryOfDrawn;
}
