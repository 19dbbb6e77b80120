import binomialCdf from '@stdlib/stats-base-dists-binomial-cdf';
import { normalQuantile } from '../distribution/quantiles.js';
import { NoSpreadError } from '../errors.js';
import { requirePairs, requireWhole } from '../sample/sample.js';

export interface FunnelUnit {
  /** Distance from the overall share in standard errors at the unit's size. */
  readonly z: number;
  /** Upper 99.8 % limit at the unit's size. */
  readonly upper: number;
  /** Probability of as many events or more, and of as few or fewer, at the overall share. */
  readonly exactUpperTail: number;
  readonly exactLowerTail: number;
}

export interface Funnel {
  readonly centre: number;
  readonly units: readonly FunnelUnit[];
}

/** Sum of P(X = i) from `events` on, as the lower tail of the failures: 1 - cdf would lose small tails. */
const upperTail = (events: number, n: number, share: number) =>
  events === 0 ? 1 : binomialCdf(n - events, n, 1 - share);

/**
 * Shares of units of different size beside the overall share: small units scatter more and are judged so.
 *
 * @see Spiegelhalter (2005), Funnel plots for comparing institutional performance, Statistics in Medicine 24:1185-1202
 */
export function funnel(events: readonly number[], sizes: readonly number[]): Funnel {
  requirePairs('Funnel', events, sizes, 2);
  events.forEach((count, index) => {
    requireWhole('Funnel', 'size', sizes[index]!, 1, Number.MAX_SAFE_INTEGER);
    requireWhole('Funnel', 'events', count, 0, sizes[index]!);
  });
  const total = (of: readonly number[]) => of.reduce((sum, value) => sum + value, 0);
  const centre = total(events) / total(sizes);
  if (centre === 0 || centre === 1)
    throw new NoSpreadError('Funnel', 'Every unit has none, or all: nothing to compare.');
  const units = events.map((count, index) => {
    const n = sizes[index]!;
    const se = Math.sqrt((centre * (1 - centre)) / n);
    return {
      z: (count / n - centre) / se,
      upper: centre + normalQuantile(0.999) * se,
      exactUpperTail: upperTail(count, n, centre),
      exactLowerTail: binomialCdf(count, n, centre),
    };
  });
  return { centre, units };
}
