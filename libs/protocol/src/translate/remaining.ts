import type { ChainLabStep, ChainPhase, ChainStage } from '../case-chain.js';
import { segmentsFor } from '../combine.js';
import { stageOf } from '../combined-stage.js';
import { stepIsToCome, type StageRow, type StepRow } from '../progress.js';
import type { FixedStage, FixedStep } from '../snapshot.js';
import { isToCome } from '../stage-state.js';
import type { PlanRequest } from './request.js';

/** A visit that the plan has to place, for the arches that still need it. */
export interface VisitToPlan {
  readonly stage: ChainStage;
  readonly row: StageRow;
  /** The booked time it keeps; null when the plan is free to choose. */
  readonly kept: FixedStage | null;
  /** The clinician's way, each way, when it is made at the patient's home; null at the clinic. */
  readonly homeTravelMinutes: number | null;
}

/** A lab step that the plan has to place. */
export interface StepToPlan {
  readonly step: ChainLabStep;
  readonly row: StepRow;
  readonly kept: FixedStep | null;
}

export interface PhaseToPlan {
  readonly phase: ChainPhase;
  readonly steps: readonly StepToPlan[];
  /** All of the phase's steps are still to be made, so its usual turnaround applies. */
  readonly isWhole: boolean;
}

/** What is left of a case, in chain order. */
export interface Remaining {
  readonly visits: readonly VisitToPlan[];
  readonly phases: readonly PhaseToPlan[];
}

/** Reviews and recalls that are only due, and what is passed, are left out. */
export function remainingOf({ chain, progress, fixedStages, fixedSteps, nowMs, patient }: PlanRequest): Remaining {
  const visits = chain.stages
    .filter((stage) => stage.chained)
    .flatMap((stage): VisitToPlan[] => {
      const row = progress.stages.find((each) => each.code === stage.code && isToCome(each.state));
      if (row === undefined) return [];
      const parts = stage.parts.filter((part) => row.arches.includes(part.arch));
      const kept = fixedStages.find((each) => each.code === stage.code && each.startMs >= nowMs) ?? null;
      const toPlan = stageOf({ code: stage.code, parts }, stage.position, true);
      const homeTravelMinutes =
        kept !== null ? kept.homeTravelMinutes : toPlan.mayTravel ? patient.homeTravelMinutes : null;
      return [{ stage: toPlan, row, kept, homeTravelMinutes }];
    });
  const phases = chain.phases.flatMap((phase): PhaseToPlan[] => {
    if (!visits.some((each) => each.stage.code === phase.beforeStage)) return [];
    const own = chain.steps.filter((step) => step.phase === phase.code);
    const steps = own.flatMap((step): StepToPlan[] => {
      const row = progress.steps.find((each) => each.code === step.code && stepIsToCome(each.state));
      if (row === undefined) return [];
      const kept = fixedSteps.find((each) => each.code === step.code && each.startMs >= nowMs) ?? null;
      return [{ step: { ...step, arches: row.arches, segments: segmentsFor(step.source, row.arches) }, row, kept }];
    });
    return steps.length === 0 ? [] : [{ phase, steps, isWhole: steps.length === own.length }];
  });
  return { visits, phases };
}
