import type { Arch, MilestoneKind, Side } from '../measurement.js';
import type { ReadingValue } from '../readings/reading.js';
import type { Source } from '../standing.js';
import type { Stage } from './stage.js';
import type { LoopTrigger, VerdictAction, VerdictKind } from './verdict.js';

/** What a rule found; everything that is the same for all its findings stands in the rule. */
export interface Outcome {
  readonly verdict: VerdictKind;
  readonly reason: string;
  readonly value: ReadingValue | null;
  readonly unit?: string;
  readonly limit: string;
  readonly action: VerdictAction;
  readonly trigger?: LoopTrigger;
  readonly blocks?: boolean;
  readonly measurement?: string;
  readonly arch?: Arch;
  readonly side?: Side;
  readonly region?: string;
  /** When it is not the rule's own. */
  readonly source?: Source;
  readonly cautionText?: string;
}

/** A check as data with one small function. */
export interface CheckRule {
  readonly code: string;
  /** Counted up whenever the function or a shipped number of this rule changes. */
  readonly version: number;
  readonly name: string;
  readonly milestones: readonly MilestoneKind[];
  readonly source: Source;
  readonly cautionText: string;
  /** Nothing when there is nothing to judge. */
  readonly evaluate: (stage: Stage) => readonly Outcome[];
}

type Passing = Omit<Outcome, 'verdict' | 'action'>;

export const passes = (outcome: Passing): Outcome => ({ ...outcome, verdict: 'pass', action: 'go-on' });

export const cautions = (outcome: Passing & { readonly action?: VerdictAction }): Outcome => ({
  action: 'correct-in-chair',
  ...outcome,
  verdict: 'caution',
});

/** A failed check always stops the stage. */
export const fails = (outcome: Passing & { readonly action: VerdictAction }): Outcome => ({
  ...outcome,
  verdict: 'fail',
  blocks: true,
});
