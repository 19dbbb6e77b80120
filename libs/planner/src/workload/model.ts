import type { OperationSegment, SlotBits } from '../chain/model.js';

/**
 * Work of many jobs on work centres with hours of their own. Time is the axis of the chain search: whole slots
 * `0 .. slotCount - 1`, ranges half-open, tables over `slotCount + 1` entries that never decrease.
 */
export interface WorkloadProblem {
  readonly slotCount: number;
  /** Day number of each slot, rising along the axis. */
  readonly dayOfSlot: Int32Array;
  readonly centres: readonly WorkloadCentre[];
  readonly jobs: readonly WorkloadJob[];
}

/** One of the numbered places of a centre: serves one operation, or one run, at a time. */
export interface WorkloadPlace {
  readonly key: string;
  /** Not taken by anything that stays where it is. */
  readonly free: SlotBits;
}

export interface WorkloadCentre {
  readonly key: string;
  /** Hands-on work goes on in these slots, and every operation starts in one of them. */
  readonly open: SlotBits;
  readonly places: readonly WorkloadPlace[];
  /** Units that one run takes where operations run together; `null` where each runs alone. */
  readonly runSize: number | null;
  /** Runs that stay, with room for more; their time is not free on their place. */
  readonly openRuns: readonly OpenRun[];
}

export interface OpenRun {
  readonly key: string;
  /** Index among the centre's places. */
  readonly place: number;
  readonly startSlot: number;
  readonly endSlot: number;
  readonly freeUnits: number;
}

/** The work between two fixed visits of one case: it is late when it is done after its due slot. */
export interface WorkloadJob {
  readonly key: string;
  /** Cost of one slot of lateness, a whole number from 1. */
  readonly weight: number;
  /** Places in which all of it may be done; one is chosen, the first is the one in force. */
  readonly alternatives: readonly WorkloadAlternative[];
}

export interface WorkloadAlternative {
  readonly key: string;
  /** Latest end of its last operation that still reaches the visit; `null` while there is no such visit. */
  readonly dueSlot: number | null;
  readonly operations: readonly WorkloadOperation[];
  readonly lags: readonly WorkloadLag[];
}

export interface WorkloadOperation {
  readonly key: string;
  /** Index among the problem's centres. */
  readonly centre: number;
  readonly segments: readonly OperationSegment[];
  /** First and last start that what is fixed leaves; a start after the last one breaks a limit. */
  readonly firstSlot: number;
  readonly lastSlot: number;
  /** Ends no earlier than this, so that the work is not too old when it is used. */
  readonly endFromSlot: number;
  /** Units it takes of a run it shares; `null` when it runs alone. */
  readonly runUnits: number | null;
  /** Where it stands in the plan in force; `null` when it stands in none. */
  readonly current: { readonly startSlot: number; readonly place: string | null } | null;
}

/** A wait between two operations of one alternative; `null` means no bound. `from` comes before `to` in their list. */
export interface WorkloadLag {
  readonly from: number;
  readonly to: number;
  readonly anchor: 'start' | 'end';
  /** Earliest start of `to` by the anchor slot of `from`. */
  readonly lo: Int32Array | null;
  /** Latest start of `to` by the anchor slot of `from`; a later one breaks a limit. */
  readonly hi: Int32Array | null;
}

/** What a plan is judged by, all to be small and whole. Compared one after the other, never added up. */
export interface WorkloadObjective {
  /** Slots by which limits are exceeded; an operation without a place costs a whole axis. */
  readonly violations: number;
  /** Slots of lateness, each times the weight of its job. */
  readonly lateness: number;
  /** Operations that leave the time or the alternative of the plan in force. */
  readonly disruption: number;
  /** Slots above 85 % of the open ones, squared, over all centres and days. */
  readonly overload: number;
  /** Slots between first start and last end, over all jobs. */
  readonly inProgress: number;
}

export interface PlacedOperation {
  readonly job: number;
  readonly operation: number;
  /** -1 when there is no room for it on the axis; so is the end then. */
  readonly startSlot: number;
  readonly endSlot: number;
  /** Key of its place; `null` when it holds none. */
  readonly place: string | null;
  /** Ranges for which the place is kept. */
  readonly holds: readonly { readonly startSlot: number; readonly endSlot: number }[];
}

/** How much of a centre's open time of a day is taken, over all its places. */
export interface CentreDay {
  readonly centre: number;
  /** As in `dayOfSlot`. */
  readonly day: number;
  readonly loadSlots: number;
  readonly openSlots: number;
}

export interface WorkloadPlan {
  readonly objective: WorkloadObjective;
  /** Index of the chosen alternative of each job. */
  readonly chosen: readonly number[];
  /** Every operation of the chosen alternatives. Those with one place, start and centre of runs share a run. */
  readonly placed: readonly PlacedOperation[];
  /** Days on which a centre is open, in the order of centres and days. */
  readonly load: readonly CentreDay[];
}
