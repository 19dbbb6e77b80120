import { requireSample } from './sample.js';

/** The nine definitions of a sample quantile. Handbooks of quality use 6, most programs 7. */
export type QuantileType = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8 | 9;

/** Of the continuous definitions: position in the sorted sample is `a + p (n + 1 - a - b)`. */
const PLOTTING: Readonly<Record<4 | 5 | 6 | 7 | 8 | 9, readonly [a: number, b: number]>> = {
  4: [0, 1],
  5: [0.5, 0.5],
  6: [0, 0],
  7: [1, 1],
  8: [1 / 3, 1 / 3],
  9: [3 / 8, 3 / 8],
};
/** Guards a position that is whole in exact arithmetic against the rounding of p n. */
const FUZZ = 4 * Number.EPSILON;

export const sorted = (values: readonly number[]): number[] => [...values].sort((a, b) => a - b);

/**
 * Sample quantile.
 *
 * @param ascending values in ascending order
 * @param p probability in [0, 1]
 * @see Hyndman & Fan (1996), Sample quantiles in statistical packages, The American Statistician 50:361-365
 */
export function quantileOfSorted(ascending: readonly number[], p: number, type: QuantileType): number {
  requireSample('Quantile', ascending, 1);
  const n = ascending.length;
  const at = (position: number) => ascending[Math.min(Math.max(position, 1), n) - 1]!;
  if (type <= 3) {
    const position = n * p + (type === 3 ? -0.5 : 0);
    const below = Math.floor(position + FUZZ);
    const isWhole = Math.abs(position - below) <= FUZZ * Math.max(1, position);
    if (!isWhole) return at(below + 1);
    if (type === 1) return at(below);
    if (type === 2) return (at(below) + at(below + 1)) / 2;
    return at(below % 2 === 0 ? below : below + 1);
  }
  const [a, b] = PLOTTING[type as 4 | 5 | 6 | 7 | 8 | 9];
  const position = a + p * (n + 1 - a - b);
  const below = Math.floor(position + FUZZ);
  const part = Math.max(0, position - below);
  return at(below) + (part < FUZZ ? 0 : part * (at(below + 1) - at(below)));
}
