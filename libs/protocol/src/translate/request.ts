import type { CaseChain } from '../case-chain.js';
import type { TimeSpan } from '../path-schema.js';
import type { CaseProgress } from '../progress.js';
import type { CaseWishes, FixedStage, FixedStep, PatientSnapshot, PracticeSnapshot } from '../snapshot.js';

/** Everything that planning one case reads: the case as it stands, the practice, the patient, what is accepted. */
export interface PlanRequest {
  readonly chain: CaseChain;
  readonly progress: CaseProgress;
  /** Stages that took place, are under way, or keep their booked time; the last go of each. */
  readonly fixedStages: readonly FixedStage[];
  /** Lab steps that are done, started, or keep their booked time; the last go of each. */
  readonly fixedSteps: readonly FixedStep[];
  readonly practice: PracticeSnapshot;
  readonly patient: PatientSnapshot;
  readonly wishes: CaseWishes;
  readonly nowMs: number;
  /** No visit starts earlier, such as after the notice a patient needs; null: from now on. */
  readonly notBeforeMs: number | null;
  /** How far ahead to look; 16 serves the paths without long healing, 32 those with it. */
  readonly horizonWeeks: number;
  /** True: turnarounds as in a rush. */
  readonly rush: boolean;
  /** Limits that replace the path's, by lag code: a material record, or a longer wait that a person agreed to. */
  readonly lagOverrides: Readonly<Record<string, { readonly min?: TimeSpan | null; readonly max?: TimeSpan | null }>>;
  /** A person agreed to come on dates given as impossible. */
  readonly ignoreUnavailable: boolean;
}
