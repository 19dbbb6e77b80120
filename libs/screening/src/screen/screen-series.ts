import { median } from 'simple-statistics';
import { ewma } from '../charts/ewma.js';
import { qnScale } from '../location/robust-scale.js';
import { requireBetween, requireSample } from '../sample/sample.js';
import { ewmaWidth } from './ewma-width.js';

export interface SeriesSettings {
  /**
   * Average run length: steady series give one false alarm in so many values soon after they were learned, and fewer
   * later, since a level that was learned badly is soon learned anew.
   */
  readonly valuesPerAlarm: number;
  /** Smallest step of the instrument, in the values' unit: no spread below it is believed. */
  readonly resolution: number;
}

/** A lasting change of a series' level. */
export interface Drift {
  /** Position, from 0, of the value at which it was found. */
  readonly foundAt: number;
  /** Position at which the new level most likely began. */
  readonly since: number;
  readonly target: number;
  readonly spread: number;
  /** Median of the values since. */
  readonly level: number;
}

export type SeriesOutcome =
  | { readonly outcome: 'too-few'; readonly size: number; readonly needed: number }
  | { readonly outcome: 'steady' | 'drifted'; readonly size: number; readonly drifts: readonly Drift[] };

/** Values that teach what is usual in a series. Project default: fewer make the limits too wide to find anything. */
export const LEARNED = 40;
/** Weight of the newest value: finds a shift of about one spread soonest (Lucas & Saccucci 1990, from memory). */
const LAMBDA = 0.2;
/** One wild value is no drift: it counts as one that lies this many spreads away. */
const WILD_SPREADS = 3;

/**
 * Looks along a series, oldest value first, for a level that moves away from its own beginning. Target and spread are
 * learned from the first {@link LEARNED} values, robustly; after a drift the new level is learned in the same way. What
 * was found stays found when values are added, so that a series may be looked at every night.
 *
 * @see Roberts (1959), Technometrics 1:239-250 (chart); Rousseeuw & Croux (1993), JASA 88:1273-1283 (spread)
 */
export function screenSeries(values: readonly number[], { valuesPerAlarm, resolution }: SeriesSettings): SeriesOutcome {
  requireSample('Series', values, 0);
  requireBetween('Series', 'resolution', resolution, 0, Infinity);
  const size = values.length;
  if (size <= LEARNED) return { outcome: 'too-few', size, needed: LEARNED + 1 };
  const width = ewmaWidth({ lambda: LAMBDA, valuesPerAlarm, learned: LEARNED });
  const drifts: Drift[] = [];
  for (let from = 0; size - from > LEARNED;) {
    const drift = firstDrift(values, from, width, resolution);
    if (drift === null) break;
    drifts.push(drift);
    from = drift.foundAt + 1;
  }
  return { outcome: drifts.length > 0 ? 'drifted' : 'steady', size, drifts };
}

function firstDrift(values: readonly number[], from: number, width: number, resolution: number): Drift | null {
  const usual = values.slice(from, from + LEARNED);
  const target = median(usual);
  const spread = Math.max(qnScale(usual), resolution);
  const start = from + LEARNED;
  const scores = values.slice(start).map((value) => tame((value - target) / spread));
  const { averages, upperAsymptotic } = ewma(scores, { target: 0, sigma: 1, lambda: LAMBDA, width });
  const at = averages.findIndex((average) => Math.abs(average) > upperAsymptotic);
  if (at < 0) return null;
  const since = start + likelyStart(scores, at);
  const foundAt = start + at;
  return { foundAt, since, target, spread, level: median(values.slice(since, foundAt + 1)) };
}

/** The beginning that makes the values up to `at` most likely: largest squared sum per value (Pignatiello & Samuel 2001, from memory). */
function likelyStart(scores: readonly number[], at: number): number {
  let [start, largest, sum] = [at, 0, 0];
  for (let from = at; from >= 0; from--) {
    sum += scores[from]!;
    const gain = (sum * sum) / (at - from + 1);
    if (gain > largest) [start, largest] = [from, gain];
  }
  return start;
}

const tame = (score: number): number => Math.max(-WILD_SPREADS, Math.min(WILD_SPREADS, score));
