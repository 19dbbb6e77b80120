import type { Interval } from '@archwright/calendar';
import type { CaseChain } from '../case-chain.js';
import type { CaseProgress } from '../progress.js';
import type { FixedStage, FixedStep, OpenBatchSnapshot, PracticeSnapshot } from '../snapshot.js';

/** A laboratory step that may be planned anew, and where it stands now. */
export interface MovableStep {
  readonly code: string;
  readonly startMs: number;
  readonly placeId: string | null;
  /** Time that it takes of its place now, alone or in a run with other work that may move. */
  readonly holds: readonly Interval[];
  /** The run that it shares now, and how much of it it takes; null when it runs alone. */
  readonly run: { readonly id: string; readonly units: number } | null;
}

/** One case with work to come in a laboratory. Its visits stay; those that are not booked are dropped in `progress`. */
export interface CaseWork {
  readonly caseId: string;
  readonly chain: CaseChain;
  readonly progress: CaseProgress;
  readonly fixedStages: readonly FixedStage[];
  /** Steps that are done, begun, or stay where they are. */
  readonly fixedSteps: readonly FixedStep[];
  readonly movable: readonly MovableStep[];
  readonly clinicIds: readonly string[];
}

/** A machine that several cases' work shares, with its runs. */
export interface SharedMachine {
  readonly workCentreId: string;
  readonly runSize: number;
  readonly runs: readonly SharedRun[];
}

export interface SharedRun extends OpenBatchSnapshot {
  /** Units beside those of work that is not among what may move. */
  readonly freeUnits: number;
  /** Such work is in it, so that it stays whatever else moves. */
  readonly hasOthers: boolean;
}

/** Everything that planning the work of many cases reads, as it stood at one instant. */
export interface WorkloadRequest {
  readonly laboratoryId: string;
  /** Other laboratories to which work may go whose visit before it is still to come. */
  readonly otherLaboratoryIds: readonly string[];
  /** What may move takes no time in it. */
  readonly practice: PracticeSnapshot;
  readonly cases: readonly CaseWork[];
  readonly machines: readonly SharedMachine[];
  /** Minutes that a work centre stays open longer on each of its working days. */
  readonly overtime: readonly { readonly workCentreId: string; readonly minutes: number }[];
  readonly nowMs: number;
  readonly horizonWeeks: number;
  /** Zone of the laboratory, in which its days are counted. */
  readonly zone: string;
}
