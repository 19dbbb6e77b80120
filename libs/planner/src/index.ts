export type {
  ArcTables,
  ChainClinician,
  ChainLag,
  ChainOffer,
  ChainOffers,
  ChainOperation,
  ChainPhase,
  ChainPlan,
  ChainProblem,
  ChainResource,
  ChainVector,
  ChainVisit,
  KitNeed,
  LabAlternative,
  OfferReason,
  OpenBatch,
  OperationSegment,
  PhaseArc,
  PhaseNode,
  PlacementRule,
  PlannedOperation,
  PlannedVisit,
  SlotBits,
  VisitOption,
} from './chain/model.js';
export { and, erode, nextBit, orInto, previousBit, setRange } from './chain/bits.js';
export { ChainCache } from './chain/cache.js';
export {
  ContradictoryWaitsError,
  LabWithoutCapacityError,
  NoClinicianError,
  VisitTooLongError,
} from './chain/errors.js';
export { planOffers } from './chain/offers.js';
export { replanChain, type CurrentVisit, type MovedPlan, type ReplanAim } from './replan/replan-chain.js';
export { slotsKeepingRest, type KeepingStart } from './replan/slots-keeping-rest.js';
export { JointPlanner } from './replan/draft.js';
export { withHeld, type HeldTime } from './replan/held-time.js';
export type { CurrentOperation, JointCase } from './replan/joint-case.js';
export { climb, planEach, type Rung } from './replan/ladder.js';
export { undominated } from './replan/undominated.js';
export { compareLevels, type CaseStanding, type LevelObjective } from './replan/level-objective.js';
export { VisitLevelling } from './replan/level-visits.js';
export { pullForward, type FreedTime } from './replan/pull-forward.js';
export { earliestDelivery } from './replan/earliest-delivery.js';
export { smallestRelaxations } from './explain/smallest-relaxations.js';
export type { MachineChoice, MachineShop, ShopPlan } from './shop/machine-shop.js';
export type { Activity, Project, ProjectPlan, StartLag } from './shop/project.js';
export { gapPercent, verdictOf, type Search, type Verdict } from './shop/search.js';
export { ShopSearch } from './shop/search-shop.js';
export { LagSearch } from './shop/search-lags.js';
export { EPOCH_SCHEDULES, ProjectSearch } from './shop/search-project.js';
export { projectFaults } from './shop/verify-project.js';
export { shopFaults } from './shop/verify-shop.js';
export type {
  CentreDay,
  PlacedOperation,
  WorkloadAlternative,
  WorkloadCentre,
  WorkloadJob,
  WorkloadLag,
  WorkloadObjective,
  WorkloadOperation,
  WorkloadPlan,
  WorkloadProblem,
} from './workload/model.js';
export { FULL_PERCENT, type WorkloadAim } from './workload/objective.js';
export { bestFind, WorkloadSearch, type StreamFind } from './workload/search-workload.js';
export { workloadFaults } from './workload/verify-workload.js';
export type { WorkloadBound } from './workload/workload-bound.js';
