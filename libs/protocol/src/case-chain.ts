import type {
  Arch,
  ChairMinutes,
  GateRequirement,
  LabPhase,
  Milestone,
  PathGate,
  PathLabStep,
  PathLoop,
  PathVisit,
  PointOfNoReturnKind,
  StepPredecessor,
  StepSegment,
  TimeSpan,
} from './path-schema.js';

/** One visit of one arch's path that a stage serves. */
export interface StagePart {
  readonly arch: Arch;
  /** Code of the path. */
  readonly path: string;
  readonly visit: PathVisit;
}

/** One visit of a case, for one arch or both. */
export interface ChainStage {
  readonly code: string;
  readonly title: string;
  /** Place in the total order, from 0. */
  readonly position: number;
  readonly arches: readonly Arch[];
  readonly parts: readonly StagePart[];
  readonly milestones: readonly Milestone[];
  /** Minutes for all the arches of the stage. */
  readonly chairMinutes: Pick<ChairMinutes, 'min' | 'typical' | 'max'>;
  readonly skills: readonly string[];
  readonly kits: readonly string[];
  readonly assistant: boolean;
  readonly mayTravel: boolean;
  readonly captures: readonly (PathVisit['captures'][number] & { readonly arches: readonly Arch[] })[];
  readonly checklist: PathVisit['checklist'];
  readonly cautions: readonly string[];
  /** An arch's denture is placed here. */
  readonly isDelivery: boolean;
  readonly isReview: boolean;
  readonly chained: boolean;
  readonly pointOfNoReturn: PointOfNoReturnKind | null;
}

/** One lab step of a case, for the arches whose work runs together. */
export interface ChainLabStep {
  readonly code: string;
  readonly title: string;
  readonly phase: string;
  readonly arches: readonly Arch[];
  readonly afterStage: string;
  readonly beforeStage: string;
  readonly workCentre: string;
  /** Minutes for all the arches of the step. */
  readonly segments: readonly StepSegment[];
  readonly batch: PathLabStep['batch'];
  /** Codes are those of the chain. */
  readonly after: readonly StepPredecessor[];
  readonly pointOfNoReturn: PointOfNoReturnKind | null;
  /** The path's own step, in minutes for both arches. */
  readonly source: PathLabStep;
}

/** Laboratory work between two stages, which may have stages of the other arch between them. */
export interface ChainPhase {
  readonly code: string;
  readonly arches: readonly Arch[];
  readonly afterStage: string;
  readonly beforeStage: string;
  readonly outward: LabPhase['outward'];
  readonly turnaround: LabPhase['turnaround'];
  readonly steps: readonly string[];
}

export interface ChainLag {
  readonly code: string;
  readonly title: string;
  readonly arches: readonly Arch[];
  /** A stage or a lab step. */
  readonly from: string;
  readonly to: string;
  readonly min: TimeSpan | null;
  readonly max: TimeSpan | null;
}

export interface ChainGate extends Omit<PathGate, 'requires'> {
  readonly arches: readonly Arch[];
  readonly requires: readonly GateRequirementOfStage[];
}

/** A requirement whose `at` names a stage of the chain. */
export type GateRequirementOfStage = GateRequirement & { readonly title: string };

export interface ChainLoop extends PathLoop {
  readonly arches: readonly Arch[];
}

export interface ChainObject {
  readonly code: string;
  readonly title: string;
  readonly arches: readonly Arch[];
  readonly madeAt: string;
  readonly shared: boolean;
}

/** A case's visits in total order with each arch's laboratory work, lags, gates and loops, codes unique throughout. */
export interface CaseChain {
  readonly paths: readonly { readonly arch: Arch; readonly code: string; readonly version: number }[];
  readonly stages: readonly ChainStage[];
  readonly phases: readonly ChainPhase[];
  readonly steps: readonly ChainLabStep[];
  readonly lags: readonly ChainLag[];
  readonly gates: readonly ChainGate[];
  readonly loops: readonly ChainLoop[];
  readonly objects: readonly ChainObject[];
}
