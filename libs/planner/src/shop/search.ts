/** A search for one plan that can be stopped after any epoch, and replayed by its seed and its epochs. */
export interface Search<Plan> {
  /** No plan is shorter; Infinity when it is proved that there is none. */
  readonly lowerBound: number;
  /** Of the best plan so far; Infinity while none is found. */
  readonly makespan: number;
  /** The best plan so far; null while none is found. */
  readonly best: (Plan & { readonly makespan: number }) | null;
  /** Epochs run so far. */
  readonly epochs: number;
  /**
   * Searches on for a stretch that depends on instance, seed and number of the epoch only: never on the time. Does
   * nothing once the best plan is proved.
   */
  runEpoch(): void;
}

/** What is known of a plan: `within` a stated gap, unless the gap is so wide that it says little. */
export type Verdict = 'proved best' | 'within' | 'bound is weak here';

/** Beyond this gap the bound says more about itself than about the plan. Project default. */
const WEAK_FROM_PERCENT = 10;

/** Most by which the value can exceed the best one, in percent of the value. */
export function gapPercent(value: number, bound: number): number {
  return (100 * (value - bound)) / Math.max(1, value);
}

export function verdictOf(value: number, bound: number): Verdict {
  if (value <= bound) return 'proved best';
  return gapPercent(value, bound) <= WEAK_FROM_PERCENT ? 'within' : 'bound is weak here';
}
