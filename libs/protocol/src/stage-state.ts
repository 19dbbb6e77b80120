import { IllegalTransitionError } from './errors.js';

export type StageState = 'waiting' | 'planned' | 'ready' | 'in-progress' | 'passed' | 'repeated' | 'dropped';

const NEXT: Readonly<Record<StageState, readonly StageState[]>> = {
  waiting: ['planned', 'dropped'],
  planned: ['ready', 'waiting', 'dropped'],
  // Back to planned when its work leaves again or the visit moves; to waiting when the booking is gone.
  ready: ['in-progress', 'planned', 'waiting', 'dropped'],
  'in-progress': ['passed', 'repeated', 'ready'],
  // Only a loop undoes a passed stage: a late finding pauses the next point of no return instead.
  passed: ['repeated'],
  repeated: [],
  dropped: ['waiting'],
};

/**
 * The state a stage takes.
 *
 * @throws {IllegalTransitionError} when `to` cannot follow `from`
 */
export function changeStageState(from: StageState, to: StageState): StageState {
  if (!NEXT[from].includes(to)) throw new IllegalTransitionError('stage', from, to, NEXT[from]);
  return to;
}

/** Whether the stage still has to take place. */
export const isToCome = (state: StageState): boolean => state === 'waiting' || state === 'planned' || state === 'ready';
