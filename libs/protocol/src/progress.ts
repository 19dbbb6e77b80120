import type { CaseChain } from './case-chain.js';
import { UnknownPartError } from './errors.js';
import type { Arch, PointOfNoReturnKind } from './path-schema.js';
import { isToCome, type StageState } from './stage-state.js';

export type LabStepState =
  'unplanned' | 'planned' | 'ready' | 'started' | 'paused' | 'finished' | 'rejected' | 'discarded';

/** One go at a stage. A repeat is a new row with the next round; what an earlier row achieved for other arches stands. */
export interface StageRow {
  readonly code: string;
  readonly round: number;
  readonly arches: readonly Arch[];
  readonly state: StageState;
  /** Arches for which this go no longer counts. */
  readonly voided: readonly Arch[];
}

/** One go at a lab step. */
export interface StepRow {
  readonly code: string;
  readonly round: number;
  readonly arches: readonly Arch[];
  readonly state: LabStepState;
  readonly voided: readonly Arch[];
}

export interface CaseProgress {
  readonly stages: readonly StageRow[];
  readonly steps: readonly StepRow[];
}

/** A case at its beginning: every stage waits, no lab step is planned. */
export function startProgress(chain: CaseChain): CaseProgress {
  return {
    stages: chain.stages.map(({ code, arches }) => ({ code, round: 1, arches, state: 'waiting', voided: [] })),
    steps: chain.steps.map(({ code, arches }) => ({ code, round: 1, arches, state: 'unplanned', voided: [] })),
  };
}

const STEP_TO_COME: readonly LabStepState[] = ['unplanned', 'planned', 'ready'];

/** Whether the lab step still has to be started. */
export const stepIsToCome = (state: LabStepState): boolean => STEP_TO_COME.includes(state);

/**
 * Where a part stands in the chain: stages at 0, 1, 2 …, lab steps half a place after the stage before them.
 *
 * @throws {UnknownPartError} when the chain has neither stage nor step of that code
 */
export function positionOf(chain: CaseChain, code: string): number {
  const stage = chain.stages.find((each) => each.code === code);
  if (stage !== undefined) return stage.position;
  const step = chain.steps.find((each) => each.code === code);
  if (step === undefined)
    throw new UnknownPartError(
      'stage',
      code,
      chain.stages.map((each) => each.code),
    );
  return positionOf(chain, step.afterStage) + 0.5;
}

export interface PointOfNoReturn {
  readonly kind: PointOfNoReturnKind;
  /** Stage or lab step that cannot be undone. */
  readonly code: string;
  readonly title: string;
  readonly arches: readonly Arch[];
}

/** The next thing that cannot be undone: what a late finding pauses. Null when none is left. */
export function nextPointOfNoReturn(chain: CaseChain, progress: CaseProgress): PointOfNoReturn | null {
  const rows = [
    ...progress.stages.filter((row) => isToCome(row.state)),
    ...progress.steps.filter((row) => stepIsToCome(row.state)),
  ];
  const parts = new Map([...chain.stages, ...chain.steps].map((part) => [part.code, part]));
  const points = rows.flatMap((row): (PointOfNoReturn & { position: number })[] => {
    const part = parts.get(row.code);
    if (part === undefined || part.pointOfNoReturn === null) return [];
    const { title, pointOfNoReturn: kind } = part;
    return [{ kind, code: row.code, title, arches: row.arches, position: positionOf(chain, row.code) }];
  });
  const first = points.sort((a, b) => a.position - b.position)[0];
  if (first === undefined) return null;
  const { kind, code, title, arches } = first;
  return { kind, code, title, arches };
}
