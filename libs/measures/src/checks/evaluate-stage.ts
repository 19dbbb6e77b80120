import { DifferentMethodError, ScoringError } from '../errors.js';
import type { NumberMeasurement } from '../measurement.js';
import type { Reading } from '../readings/reading.js';
import { AGREEMENT_RULES } from './agreement-rules.js';
import { BASE_RULES } from './base-rules.js';
import { INDEX_RULES } from './index-rules.js';
import { OUTCOME_RULES } from './outcome-rules.js';
import { PLANE_RULES } from './plane-rules.js';
import { cautions, type CheckRule, type Outcome } from './rule.js';
import { checkSettings, type PracticeOverlay } from './settings.js';
import { SPEECH_RULES } from './speech-rules.js';
import { Stage, type StageFacts } from './stage.js';
import { TISSUE_RULES } from './tissue-rules.js';
import { TRACING_RULES } from './tracing-rules.js';
import { judgeNumber, usualRange } from './usual-range-rule.js';
import type { Verdict } from './verdict.js';
import { judgeRestDistance, restDistance, VERTICAL_RULES } from './vertical-rules.js';

/** Every check, in the order in which a visit reads them. */
export const CHECK_RULES: readonly CheckRule[] = [
  ...INDEX_RULES,
  ...TISSUE_RULES,
  ...BASE_RULES,
  ...VERTICAL_RULES,
  ...SPEECH_RULES,
  ...TRACING_RULES,
  ...PLANE_RULES,
  ...AGREEMENT_RULES,
  ...OUTCOME_RULES,
  usualRange,
];

export interface StageInput {
  readonly readings: readonly Reading[];
  readonly facts: StageFacts;
  readonly overlay?: PracticeOverlay | null;
}

/**
 * Runs every check that belongs to the visit's milestones. A check without its values says nothing.
 *
 * @returns verdicts in the order of {@link CHECK_RULES}; they support and do not replace judgement
 * @throws {DomainError} for a reading that would not be accepted, and for an overlay that asks for what a practice may
 *   not change; values with different landmarks are a caution that asks to measure again
 */
export function evaluateStage(input: StageInput): readonly Verdict[] {
  const settings = checkSettings(input.overlay ?? null);
  const stage = new Stage(input.readings, input.facts, settings);
  return CHECK_RULES.filter((rule) => stage.isAt(...rule.milestones)).flatMap((rule) =>
    outcomesOf(rule, stage).map((outcome) => toVerdict(rule, outcome, settings.practiceVersion)),
  );
}

/** Values that can't be compared or scored as they are: the rule asks for new ones, and the other rules still speak. */
function outcomesOf(rule: CheckRule, stage: Stage): readonly Outcome[] {
  try {
    return rule.evaluate(stage);
  } catch (error) {
    if (!(error instanceof DifferentMethodError) && !(error instanceof ScoringError)) throw error;
    const limit = error instanceof ScoringError ? 'grades of the scale' : 'the same landmarks and posture';
    return [cautions({ value: null, limit, reason: error.message, action: 'repeat' })];
  }
}

/** The verdict on one computed value without the visit around it, for an explanation. */
export function judgeAlone(
  measurement: NumberMeasurement,
  value: number,
  overlay: PracticeOverlay | null,
): readonly Verdict[] {
  const settings = checkSettings(overlay);
  const stage = new Stage([], { milestones: ['jaw-relation'], arches: [] }, settings);
  const isRest = measurement.code === 'interocclusal-rest-distance';
  const usual = judgeNumber(stage, measurement, { code: measurement.code, value }, value);
  const outcomes = isRest
    ? judgeRestDistance(stage, value, `${measurement.name} ${String(value)} mm`)
    : usual === null
      ? []
      : [usual];
  return outcomes.map((outcome) => toVerdict(isRest ? restDistance : usualRange, outcome, settings.practiceVersion));
}

function toVerdict(rule: CheckRule, outcome: Outcome, practiceVersion: number | null): Verdict {
  const { source = rule.source, cautionText = rule.cautionText, unit = null, blocks = false, ...rest } = outcome;
  return {
    ...rest,
    rule: rule.code,
    ruleVersion:
      practiceVersion === null ? String(rule.version) : `${String(rule.version)}+p${String(practiceVersion)}`,
    unit,
    blocks,
    source: source.text,
    standing: source.standing,
    cautionText,
  };
}
