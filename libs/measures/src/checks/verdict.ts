import type { Arch, Side } from '../measurement.js';
import type { ReadingValue } from '../readings/reading.js';
import type { Standing } from '../standing.js';

/** What sends a case back: codes of a treatment path's loops, which name where to go and what is discarded. */
export const LOOP_TRIGGERS = [
  'tray-does-not-fit',
  'impression-flawed',
  'base-does-not-fit',
  'jaw-relation-not-recorded',
  'vertical-dimension-out-of-rule',
  'rim-unstable',
  'jaw-relation-wrong-at-trial',
  'looks-refused',
  'occlusion-small-error',
  'jaw-relation-wrong-after-cure',
  'jaw-relation-wrong-after-print',
  'poor-retention',
  'flaw-found-in-laboratory',
  'mucosa-not-healthy',
  'reline-does-not-fit',
] as const;
export type LoopTrigger = (typeof LOOP_TRIGGERS)[number];

/** A path without a loop of that name may have one that means the same there. */
const SAME_MEANING: Partial<Record<LoopTrigger, LoopTrigger>> = {
  'tray-does-not-fit': 'base-does-not-fit',
  'rim-unstable': 'base-does-not-fit',
  'base-does-not-fit': 'impression-flawed',
  'jaw-relation-wrong-after-cure': 'jaw-relation-wrong-after-print',
  'poor-retention': 'reline-does-not-fit',
};

/**
 * The loop of a path that a trigger means.
 *
 * @param loops codes of the path's loops
 * @returns null when the path has none: a person decides where to go back to
 */
export function loopForTrigger(trigger: LoopTrigger, loops: readonly string[]): LoopTrigger | null {
  if (loops.includes(trigger)) return trigger;
  const other = SAME_MEANING[trigger];
  return other === undefined ? null : loopForTrigger(other, loops);
}

export const VERDICT_KINDS = ['pass', 'caution', 'fail'] as const;
export type VerdictKind = (typeof VERDICT_KINDS)[number];

export const VERDICT_ACTIONS = ['go-on', 'correct-in-chair', 'repeat', 'return-to-stage'] as const;
export type VerdictAction = (typeof VERDICT_ACTIONS)[number];

/** Shown wherever a result is shown. */
export const JUDGEMENT_NOTE = 'Supports and does not replace professional judgement; local rules decide.';

/** What a check says, with everything a clinician needs to judge it. Supports and does not replace judgement. */
export interface Verdict {
  readonly rule: string;
  /** Rule version, with the practice's settings after a plus sign: `2+p7`. */
  readonly ruleVersion: string;
  readonly verdict: VerdictKind;
  readonly reason: string;
  /** Null when the check is about several findings at once. */
  readonly value: ReadingValue | null;
  readonly unit: string | null;
  readonly limit: string;
  readonly source: string;
  readonly standing: Standing;
  readonly action: VerdictAction;
  readonly trigger?: LoopTrigger;
  /** Stops the stage until it is corrected or a clinician overrides it with a reason. */
  readonly blocks: boolean;
  readonly cautionText: string;
  readonly measurement?: string;
  readonly arch?: Arch;
  readonly side?: Side;
  readonly region?: string;
}

/** The value that was judged as people read it, such as `3 mm`; null when the verdict is about several findings. */
export function valueInWords({ value, unit }: Pick<Verdict, 'value' | 'unit'>): string | null {
  if (value === null) return null;
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'string') return value.replaceAll('-', ' ');
  const rounded = String(Math.round(value * 100) / 100);
  return unit === null || unit === 'count' ? rounded : `${rounded} ${unit}`;
}

/** The worst of several verdicts; pass when there is none. */
export function overallVerdict(verdicts: readonly Pick<Verdict, 'verdict'>[]): VerdictKind {
  return verdicts.reduce<VerdictKind>(
    (worst, { verdict }) => (VERDICT_KINDS.indexOf(verdict) > VERDICT_KINDS.indexOf(worst) ? verdict : worst),
    'pass',
  );
}

const subject = (verdict: Verdict): string =>
  [verdict.rule, verdict.measurement, verdict.arch, verdict.side, verdict.region].map((part) => part ?? '').join('|');

/**
 * The verdicts in force after a later evaluation: for each rule and subject the later one holds, so that a finding
 * yields to a later passed check; what was not evaluated again stays.
 */
export function verdictsInForce(earlier: readonly Verdict[], later: readonly Verdict[]): readonly Verdict[] {
  const bySubject = new Map<string, Verdict>();
  for (const verdict of [...earlier, ...later]) bySubject.set(subject(verdict), verdict);
  return [...bySubject.values()];
}
