import { requireSample } from '../sample/sample.js';

/** Rules on standardised values; `1-2s` only warns, `2of3-2s` is offered for run lengths beside the classical five. */
export type ControlRule = '1-2s' | '1-3s' | '2-2s' | '2of3-2s' | 'R-4s' | '4-1s' | '10-x';

export interface Multirule {
  /** Rules completed at each point; limits are exceeded only by strictly greater values. */
  readonly rulesAtEachPoint: readonly (readonly ControlRule[])[];
  /** Position, from 0, of the first rule other than the warning; null where none is broken. */
  readonly firstRejection: number | null;
}

/** The last `count` values all beyond `limit` on one side. */
function allBeyond(z: readonly number[], index: number, count: number, limit: number): boolean {
  if (index + 1 < count) return false;
  const last = z.slice(index + 1 - count, index + 1);
  return last.every((value) => value > limit) || last.every((value) => value < -limit);
}

/** What each rule asks of the values up to a point. */
const RULES: Readonly<Record<ControlRule, (z: readonly number[], index: number) => boolean>> = {
  '1-2s': (z, at) => Math.abs(z[at]!) > 2,
  '1-3s': (z, at) => Math.abs(z[at]!) > 3,
  '2-2s': (z, at) => allBeyond(z, at, 2, 2),
  '2of3-2s': (z, at) => {
    const last = z.slice(Math.max(0, at - 2), at + 1);
    return last.filter((value) => value > 2).length >= 2 || last.filter((value) => value < -2).length >= 2;
  },
  'R-4s': (z, at) => at > 0 && Math.max(z[at]!, z[at - 1]!) > 2 && Math.min(z[at]!, z[at - 1]!) < -2,
  '4-1s': (z, at) => allBeyond(z, at, 4, 1),
  '10-x': (z, at) => allBeyond(z, at, 10, 0),
};

/** The published set, warning first. */
export const CLASSICAL_RULES: readonly ControlRule[] = ['1-2s', '1-3s', '2-2s', 'R-4s', '4-1s', '10-x'];

/**
 * Control rules on values standardised as (x - target) / sigma. R-4s is read as two consecutive values beyond 2
 * standard deviations on opposite sides.
 *
 * @see Westgard, Barry, Hunt & Groth (1981), A multi-rule Shewhart chart for quality control in clinical chemistry,
 *   Clinical Chemistry 27:493-501
 */
export function multirule(z: readonly number[], rules: readonly ControlRule[] = CLASSICAL_RULES): Multirule {
  requireSample('Multirule', z, 1);
  const rulesAtEachPoint = z.map((_, index) => rules.filter((rule) => RULES[rule](z, index)));
  const first = rulesAtEachPoint.findIndex((broken) => broken.some((rule) => rule !== '1-2s'));
  return { rulesAtEachPoint, firstRejection: first < 0 ? null : first };
}
