export { cautions, type Caution } from './cautions.js';
export type {
  CaseChain,
  ChainGate,
  ChainLabStep,
  ChainLag,
  ChainLoop,
  ChainObject,
  ChainPhase,
  ChainStage,
  StagePart,
} from './case-chain.js';
export {
  changeOfCaseState,
  nextCaseStates,
  type CaseState,
  type ResumeCheck,
  type CaseStateEffects,
} from './case-state.js';
export { checkPath, parsePath } from './check-path.js';
export { combineArches } from './combine.js';
export {
  ArchesNotCombinableError,
  IllegalTransitionError,
  LoopNotApplicableError,
  NoLaboratoryError,
  NothingToPlanError,
  PathInvalidError,
  UnknownPartError,
  type PathFault,
  type PathPartKind,
  type PathProblem,
} from './errors.js';
export { escortTimes } from './escort-times.js';
export { openGates, type GateEvidence, type Guarded, type OpenGate } from './gates.js';
export { changeObjectState, type ObjectAction, type ObjectState } from './object-state.js';
export { withHealing } from './healing.js';
export { applyLoop, type Finding, type LoopOutcome } from './loop.js';
export {
  treatmentPath,
  type Arch,
  type CaseRecord,
  type GateRequirement,
  type LabPhase,
  type Milestone,
  type PathGate,
  type PathLabStep,
  type PathLag,
  type PathLoop,
  type PathObject,
  type PathVisit,
  type PointOfNoReturnKind,
  type StepPredecessor,
  type StepSegment,
  type TimeSpan,
  type TreatmentPath,
} from './path-schema.js';
export { pathDifferences, type PathDifference } from './path-difference.js';
export { PARTS_IN } from './paths/notation.js';
export { shippedPaths } from './paths/shipped.js';
export {
  nextPointOfNoReturn,
  positionOf,
  startProgress,
  stepIsToCome,
  type CaseProgress,
  type LabStepState,
  type PointOfNoReturn,
  type StageRow,
  type StepRow,
} from './progress.js';
export { singleArchMinutes } from './scale.js';
export type {
  AssistantSnapshot,
  CaseWishes,
  ChairSnapshot,
  ClinicSnapshot,
  ClinicianSnapshot,
  CourierSnapshot,
  FixedStage,
  FixedStep,
  KitSnapshot,
  LaboratorySnapshot,
  OpenBatchSnapshot,
  PatientSnapshot,
  PlaceSnapshot,
  PracticeSnapshot,
  WorkCentreSnapshot,
} from './snapshot.js';
export { changeStageState, isToCome, type StageState } from './stage-state.js';
export { timeTaken, wayMs, type MaybeAtHome } from './translate/home-visits.js';
export type { PlanLoss } from './translate/losses.js';
export {
  fromChainPlan,
  type CasePlan,
  type CasePlanLabStep,
  type CasePlanTransport,
  type CasePlanVisit,
} from './translate/plan.js';
export { PlanningAxis } from './translate/axis.js';
export { toChainProblem, type PlanNames } from './translate/problem.js';
export type { PlanRequest } from './translate/request.js';
export { toWorkload } from './translate/workload.js';
export { movedWork, type MovedWork } from './translate/workload-plan.js';
export { outlookOf, type WorkOutlook } from './translate/work-outlook.js';
export type { CaseWork, MovableStep, SharedMachine, WorkloadRequest } from './translate/workload-request.js';
