import type { ChainProblem } from '../chain/model.js';
import type { CurrentVisit, MovedPlan } from './replan-chain.js';

/** Where an operation is planned now. */
export interface CurrentOperation {
  readonly operation: string;
  readonly lab: string;
  readonly startSlot: number;
  /** `null` when it holds none. */
  readonly place: string | null;
}

/** One of several cases that are planned anew together, all on one axis of slots. */
export interface JointCase {
  readonly key: string;
  /** Its resources are free where any case's movable bookings are, its own included. */
  readonly problem: ChainProblem;
  /** One entry per visit of the problem; `null` for a visit without a booking. */
  readonly visits: readonly (CurrentVisit | null)[];
  readonly operations: readonly CurrentOperation[];
}

/** How far a change of one case reaches, the mildest first. */
export const REACHES = ['kept', 'absorbed', 'resequenced', 'visits-moved'] as const;
export type Reach = (typeof REACHES)[number];

/** A case's new plan, and how much of the old one it leaves. */
export interface CaseChange {
  readonly plan: MovedPlan;
  readonly reach: Reach;
}
