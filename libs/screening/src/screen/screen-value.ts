import { modifiedZ, type RobustScale } from '../outliers/modified-z.js';
import { requireBetween, requireSample } from '../sample/sample.js';
import { FEWEST_OTHERS, valueCut } from './value-cut.js';

/** The new value, or what it is compared by, such as its change, beside the same of others. */
export interface Comparison<Group extends string> {
  readonly group: Group;
  readonly value: number;
  readonly others: readonly number[];
}

export interface ValueSettings {
  /** Of so many ordinary values one stands out by chance, all comparisons of a value together at most. */
  readonly valuesPerAlarm: number;
  /** Smallest step of the instrument, in the values' unit: no spread below it is believed. */
  readonly resolution: number;
}

/** Too few others: nothing is said of the value. */
export interface TooFewOthers<Group extends string = string> {
  readonly outcome: 'too-few';
  readonly group: Group;
  readonly size: number;
  readonly needed: number;
}

/** How far the value lies from the middle of its group, and how far it might. */
export interface ComparedValue<Group extends string = string> {
  readonly outcome: 'fine' | 'stands-out';
  readonly group: Group;
  readonly size: number;
  readonly value: number;
  readonly median: number;
  /** Robust counterpart of a standard deviation, at least the resolution. */
  readonly spread: number;
  readonly scale: RobustScale;
  /** Distance from the median in spreads. */
  readonly score: number;
  /** The score from which on a value stands out. */
  readonly cut: number;
}

export type ValueOutcome<Group extends string = string> = TooFewOthers<Group> | ComparedValue<Group>;

/**
 * One new value beside each of its groups: fine, stands out, or too few others to tell.
 *
 * @returns one outcome per comparison, in their order
 * @see Iglewicz & Hoaglin (1993), How to Detect and Handle Outliers, ASQC Quality Press (modified z); {@link valueCut}
 */
export function screenValue<Group extends string>(
  comparisons: readonly Comparison<Group>[],
  { valuesPerAlarm, resolution }: ValueSettings,
): ValueOutcome<Group>[] {
  requireBetween('Screening', 'resolution', resolution, 0, Infinity);
  const isLarge = ({ others }: Comparison<Group>) => others.length >= FEWEST_OTHERS;
  // The chances of the comparisons add up at most (Bonferroni).
  const perComparison = valuesPerAlarm * Math.max(1, comparisons.filter(isLarge).length);
  return comparisons.map((comparison) => {
    const { group, value, others } = comparison;
    if (!isLarge(comparison)) return { outcome: 'too-few', group, size: others.length, needed: FEWEST_OTHERS };
    requireSample('Screening', [value], 1);
    const { median, unit, scale } = modifiedZ(others, { resolution });
    const spread = Math.max(unit, resolution);
    const score = (value - median) / spread;
    const cut = valueCut(others.length, perComparison);
    const outcome = Math.abs(score) > cut ? 'stands-out' : 'fine';
    return {
      outcome,
      group,
      size: others.length,
      value,
      median,
      spread,
      scale: unit < resolution ? 'resolution' : scale,
      score,
      cut,
    };
  });
}
