import { betaQuantile, normalQuantile } from '../distribution/quantiles.js';
import { requireBetween, requireWhole } from '../sample/sample.js';

type Interval = readonly [low: number, high: number];

export interface ProportionIntervals {
  /** Without continuity correction. */
  readonly wilson: Interval;
  /** Exact; never shorter than needed, often longer. */
  readonly clopperPearson: Interval;
  /** 0 at none, 1 at all. */
  readonly jeffreys: Interval;
  readonly agrestiCoull: Interval;
}

/**
 * Intervals for a share of `events` in `n`.
 *
 * @see Newcombe (1998), Two-sided confidence intervals for the single proportion, Statistics in Medicine 17:857-872;
 *   Brown, Cai & DasGupta (2001), Statistical Science 16:101-133
 */
export function proportionInterval(events: number, n: number, level = 0.95): ProportionIntervals {
  requireWhole('Proportion', 'n', n, 1, Number.MAX_SAFE_INTEGER);
  requireWhole('Proportion', 'events', events, 0, n);
  requireBetween('Proportion', 'level', level, 0, 1);
  const z = normalQuantile((1 + level) / 2);
  const low = (1 - level) / 2;
  const share = events / n;
  const spread = z * Math.sqrt((share * (1 - share)) / n + (z * z) / (4 * n * n));
  const wilsonAt = (sign: number) => (share + (z * z) / (2 * n) + sign * spread) / (1 + (z * z) / n);
  const added = n + z * z;
  const centre = (events + (z * z) / 2) / added;
  const half = z * Math.sqrt((centre * (1 - centre)) / added);
  return {
    wilson: [events === 0 ? 0 : wilsonAt(-1), events === n ? 1 : wilsonAt(1)],
    clopperPearson: [
      events === 0 ? 0 : betaQuantile(low, events, n - events + 1),
      events === n ? 1 : betaQuantile(1 - low, events + 1, n - events),
    ],
    jeffreys: [
      events === 0 ? 0 : betaQuantile(low, events + 0.5, n - events + 0.5),
      events === n ? 1 : betaQuantile(1 - low, events + 0.5, n - events + 0.5),
    ],
    agrestiCoull: [Math.max(0, centre - half), Math.min(1, centre + half)],
  };
}
