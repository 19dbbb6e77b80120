export { SORE_SPOT_REGIONS, soreSpotStatus, type SoreSpot, type SoreSpotStatus } from './after-placement/sore-spots.js';
export { centricRelationInForce, judgeTracing } from './checks/tracing-rules.js';
export { MEASUREMENTS, measurementByCode, measurementsCapturedAt } from './catalogue/catalogue.js';
export { CHECK_RULES, evaluateStage, type StageInput } from './checks/evaluate-stage.js';
export { explainMeasurement, type Explanation, type ExplainOptions } from './checks/explain.js';
export { RULE_LIMITS, type LimitCode, type RuleLimit } from './checks/limits.js';
export type { CheckRule, Outcome } from './checks/rule.js';
export {
  checkSettings,
  type CheckSettings,
  type Person,
  type PracticeOverlay,
  type UsualRange,
} from './checks/settings.js';
export { USUAL_SUBJECTS, type UsualSubject } from './checks/usual-subjects.js';
export {
  TRACING_FORMS,
  type CentricRelationRecord,
  type MarkedDimension,
  type StageFacts,
  type TracingDoubt,
  type TracingEntry,
  type TracingForm,
} from './checks/stage.js';
export {
  JUDGEMENT_NOTE,
  LOOP_TRIGGERS,
  VERDICT_ACTIONS,
  VERDICT_KINDS,
  loopForTrigger,
  overallVerdict,
  valueInWords,
  verdictsInForce,
  type LoopTrigger,
  type Verdict,
  type VerdictAction,
  type VerdictKind,
} from './checks/verdict.js';
export {
  DerivedValueError,
  DifferentMethodError,
  ImplausibleValueError,
  InvalidValueError,
  OverlayError,
  QualifierError,
  ScoringError,
  TooFewReadingsError,
  ToothCodeError,
  UnknownMeasurementError,
  WrongUnitError,
} from './errors.js';
export {
  CENTRIC_RELATION_METHODS,
  MILESTONE_KINDS,
  milestoneKindsOf,
  type Arch,
  type BooleanMeasurement,
  type CentricRelationMethod,
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
export { countsLater, subjectOf, withEarlier } from './readings/earlier.js';
export { checkReading, checkValue, type Reading, type ReadingValue } from './readings/reading.js';
export { MEASUREMENT_SETS, type MeasurementSet } from './catalogue/sets.js';
export { medianOf, summariseReadings, type ReadingSummary } from './readings/summary.js';
export type { ClosedRange, Source, Standing } from './standing.js';
export {
  asymmetryMm,
  differenceOfSummaries,
  interocclusalRestDistanceMm,
  lowerToMiddleThirdPercent,
} from './vertical/derived.js';
export { derivedValues, type DerivedValue } from './vertical/derived-values.js';
export { screwSteps, type BearingScrew, type ScrewStep, type TurnDirection } from './vertical/bearing-screw.js';
export { SIBILANT_LANGUAGES, sibilantPrompt, type SibilantPrompt } from './vertical/sibilant-prompt.js';
export {
  REPEAT_AFTER_CHANGE,
  verticalWorkUp,
  type Correction,
  type Indication,
  type VerticalWorkUp,
  type WorkUpLine,
} from './vertical/work-up.js';
export {
  classByMandibularHeight,
  edentulousClass,
  gradeLabel,
  type EdentulousClass,
  type HeightClass,
} from './scoring/edentulous-index.js';
export { KAPUR_VARIANTS, kapurScore, type KapurGrades, type KapurScore, type KapurVariant } from './scoring/kapur.js';
export { IMPACT_FORMS, type ImpactForm, type ImpactFormCode } from './scoring/impact-forms.js';
export {
  changeOfImpact,
  checkDomainValue,
  impactForm,
  scoreImpact,
  type ImpactScore,
} from './scoring/oral-health-impact.js';
export {
  AREA_CODES,
  PERMANENT_TEETH,
  areaOfArches,
  fromUniversal,
  isTooth,
  toUniversal,
  type AreaCode,
} from './teeth/notation.js';
export { TOOTH_RELATIONS, TOOTH_TARGETS, type ToothRelation, type ToothTarget } from './tooth-selection/relations.js';
export {
  toothSelection,
  type FaceWidths,
  type MeasuredToothWidth,
  type ToothEstimate,
  type ToothSelection,
} from './tooth-selection/tooth-selection.js';
export {
  classicLateralSettingDeg,
  excursionSummary,
  type ExcursionSummary,
  type Excursions,
} from './movement/excursions.js';
