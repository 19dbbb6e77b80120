import { closureStatistics } from '../closures/closures.js';
import type { Evaluation, NoApex } from '../evaluation/evaluation.js';
import type { Point } from '../point.js';

/** How far several tracings of one sitting agree. */
export interface TracingComparison {
  /** Tracings with an apex; the others have nothing to compare. */
  readonly n: number;
  readonly withoutApex: number;
  readonly apexAngleDeg: { readonly least: number; readonly mean: number; readonly most: number };
  /** Apices as worn, mm: they agree or differ only where every tracing was measured from one zero of one plate. */
  readonly apices: { readonly mean: Point; readonly rmsMm: number; readonly maxPairMm: number };
}

type Located = Pick<Evaluation, 'apex' | 'apexAngleDeg'>;

/**
 * Spread of apices and angles. It says how repeatable the sitting was, not which tracing is right: no limit for it is
 * published, and none is drawn here.
 *
 * @returns null below two tracings with an apex
 */
export function compareTracings(evaluations: readonly (Located | Pick<NoApex, 'apex'>)[]): TracingComparison | null {
  const found = evaluations.filter((each): each is Located => each.apex !== null);
  if (found.length < 2) return null;
  const angles = found.map(({ apexAngleDeg }) => apexAngleDeg);
  const { mean, rmsMm, maxPairMm } = closureStatistics(found.map(({ apex }) => apex));
  return {
    n: found.length,
    withoutApex: evaluations.length - found.length,
    apexAngleDeg: {
      least: Math.min(...angles),
      mean: angles.reduce((sum, angle) => sum + angle, 0) / angles.length,
      most: Math.max(...angles),
    },
    apices: { mean, rmsMm, maxPairMm },
  };
}
