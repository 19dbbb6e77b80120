export { MEASUREMENTS, measurementByCode, measurementsCapturedAt } from './catalogue/catalogue.js';
export { CHECK_RULES, evaluateStage, type StageInput } from './checks/evaluate-stage.js';
export { RULE_LIMITS, type LimitCode, type RuleLimit } from './checks/limits.js';
export type { CheckRule, Outcome } from './checks/rule.js';
export {
  checkSettings,
  type CheckSettings,
  type Person,
  type PracticeOverlay,
  type UsualRange,
} from './checks/settings.js';
export {
  CENTRIC_RELATION_METHODS,
  TRACING_FORMS,
  type CentricRelationMethod,
  type CentricRelationRecord,
  type MarkedDimension,
  type StageFacts,
  type TracingEntry,
  type TracingForm,
} from './checks/stage.js';
export {
  LOOP_TRIGGERS,
  VERDICT_ACTIONS,
  VERDICT_KINDS,
  overallVerdict,
  verdictsInForce,
  type LoopTrigger,
  type Verdict,
  type VerdictAction,
  type VerdictKind,
} from './checks/verdict.js';
export {
  MILESTONE_KINDS,
  type Arch,
  type BooleanMeasurement,
  type EnumMeasurement,
  type EnumOption,
  type Measurement,
  type MethodKey,
  type MilestoneKind,
  type NumberMeasurement,
  type Sex,
  type Side,
  type SkeletalClass,
  type Unit,
} from './measurement.js';
export { checkReading, checkValue, type Reading, type ReadingValue } from './readings/reading.js';
export { summariseReadings, type ReadingSummary } from './readings/summary.js';
export type { ClosedRange, Source, Standing } from './standing.js';
export {
  asymmetryMm,
  differenceOfSummaries,
  interocclusalRestDistanceMm,
  lowerToMiddleThirdPercent,
} from './vertical/derived.js';
