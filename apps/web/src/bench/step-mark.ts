import type { LabStepState } from '@archwright/contracts';
import type { MarkShape } from '../look/marks.js';

/** The state of a laboratory step by shape; its word stands beside it. */
export const STEP_MARK: Record<LabStepState, MarkShape> = {
  unplanned: 'to-come',
  planned: 'to-come',
  ready: 'to-come',
  started: 'now',
  paused: 'now',
  finished: 'done',
  rejected: 'needs-person',
  discarded: 'missed',
};
