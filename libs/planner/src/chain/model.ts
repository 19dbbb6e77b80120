/**
 * What the chain search reads and answers. It knows slots, resources and arcs, nothing of any trade.
 *
 * Time is one axis of whole slots `0 .. slotCount - 1`; ranges are half-open. A table over slots has `slotCount + 1`
 * entries, so that an end at the very end of the axis can be looked up; it never decreases.
 */

/** One bit per slot, slot `t` in bit `t & 31` of word `t >> 5`; `ceil(slotCount / 32)` words. */
export type SlotBits = Uint32Array;

/** A person, chair, kit or bench place that serves one at a time. A set bit is open and not taken by anything else. */
export interface ChainResource {
  readonly key: string;
  readonly free: SlotBits;
}

export interface ChainClinician extends ChainResource {
  /** Cost of a start by load and by the gap it leaves, whole numbers from 0, by start slot; `null` means none. Breaks ties only. */
  readonly placementCost: Uint8Array | null;
  /** Not accepted for this visit: left out of every plan, but `whyNot` may propose this person. */
  readonly refused: boolean;
}

/** A shared kit: any one unit serves, and stays away for `reprocessingSlots` after the visit's end. */
export interface KitNeed {
  readonly kind: string;
  readonly reprocessingSlots: number;
  readonly units: readonly ChainResource[];
}

/** One clinic in which a visit may take place. */
export interface VisitOption {
  readonly clinic: string;
  /** Not accepted: left out of every plan, but `whyNot` may propose this clinic. */
  readonly refused: boolean;
  readonly lengthSlots: number;
  /** Opening hours, bookings ignored: tells "longer than any opening" from "no room left". */
  readonly open: SlotBits;
  readonly clinicians: readonly ChainClinician[];
  readonly chairs: readonly ChainResource[];
  /** `null` when the visit needs no assistant. */
  readonly assistants: readonly ChainResource[] | null;
  readonly kits: readonly KitNeed[];
  /** Starts that hard wishes, notice and the calendar allow. A visit that is already booked and stays has one bit. */
  readonly allowed: SlotBits;
  /** Starts that would be allowed with the hard wish lifted (holds every bit of `allowed`); `null` when there is none to lift. */
  readonly allowedIfLifted: SlotBits | null;
}

export interface ChainVisit {
  readonly key: string;
  /**
   * Index of the visit it follows. The first visit has `null`; visits up to delivery follow their predecessor; a later
   * one follows delivery (star) or another later visit (chain). Changes of clinician and clinic are counted along
   * this link. Whatever it says, a visit never starts before the end of the visit listed before it.
   */
  readonly follows: number | null;
  readonly options: readonly VisitOption[];
  /** Starts as wished; any other start counts as one wish broken. `null` means every start is. */
  readonly wished: SlotBits | null;
}

/** Bounds on a start, looked up at the anchor slot of the arc's origin. `null` means no bound. */
export interface ArcTables {
  /** Earliest start of the target; `slotCount` when there is none. Never decreases. */
  readonly lo: Int32Array | null;
  /** Latest start of the target; -1 when there is none. Never decreases. */
  readonly hi: Int32Array | null;
}

interface Arc extends ArcTables {
  /** Names the lag in errors and proposals. */
  readonly key: string;
  /**
   * Slot of the origin at which the tables are read: its start, or its end (for a visit the start plus its length in
   * the clinic, for an operation the end its calendar gives). With `end` the origin's length is thus included.
   */
  readonly anchor: 'start' | 'end';
  /** Tables that replace `lo` and `hi` when the arc's visit (for a lag: its origin) is in that clinic, such as a courier's timetable. */
  readonly byClinic: ReadonlyMap<string, ArcTables> | null;
}

/** A wait between any two visits, neighbours or not. */
export interface ChainLag extends Arc {
  readonly from: number;
  /** Index above `from`. */
  readonly to: number;
}

/** An operation of the same alternative by its index, or one of the two visits around the phase. */
export type PhaseNode = number | 'after' | 'before';

/** `from` is an operation or the visit `after`; `to` is an operation or the visit `before`. The graph has no cycle. */
export interface PhaseArc extends Arc {
  readonly from: PhaseNode;
  readonly to: PhaseNode;
}

export interface OperationSegment {
  /** At least 1. */
  readonly slots: number;
  /** `pauses`: hands-on, rests while the centre is closed. `runs-on`: continues through closed hours. */
  readonly mode: 'pauses' | 'runs-on';
  /** Working slots of a pausing segment, or every slot of one that runs on, need the place. */
  readonly holdsPlace: boolean;
}

/** An open batch with room: may be joined at its exact start; needs no free place. */
export interface OpenBatch {
  readonly key: string;
  /** Key of the place it occupies. */
  readonly place: string;
  readonly startSlot: number;
  readonly endSlot: number;
}

/** Starts in an open slot of its centre and keeps one place for all of its holds. */
export interface ChainOperation {
  readonly key: string;
  readonly centre: string;
  readonly centreOpen: SlotBits;
  readonly segments: readonly OperationSegment[];
  /** Empty when no segment holds a place. */
  readonly places: readonly ChainResource[];
  readonly batches: readonly OpenBatch[];
  /** Starts allowed besides (already begun, object not there yet); `null` means all. */
  readonly allowed: SlotBits | null;
}

export interface LabAlternative {
  readonly lab: string;
  readonly operations: readonly ChainOperation[];
  readonly arcs: readonly PhaseArc[];
}

/**
 * Laboratory work between two visits, which need not be neighbours. Two operations of the case never use one place in
 * turns: one has given it back for good before the other takes it.
 */
export interface ChainPhase {
  readonly key: string;
  /** Index of the visit before it; `null` when that lies in the past (`allowed` of the operations says from when). */
  readonly after: number | null;
  /** Index of the visit that needs the work, above `after`. */
  readonly before: number;
  /** One is chosen per phase, freely. */
  readonly labs: readonly LabAlternative[];
}

/** How ties are broken once the four axes are equal: buffer, then placement cost, then the smaller sum of start slots. */
export interface PlacementRule {
  /**
   * Rising thresholds in slots: a visit that starts less than a threshold after the earliest return of the work made
   * since the visit it follows costs one for each threshold missed. The earliest return is that of the chosen laboratory
   * for work handed over at that visit or later, the case's other work left aside; the latest phase counts.
   */
  readonly bufferSteps: readonly number[];
  /** Most that any start costs by the `placementCost` of its clinician; at most 255. */
  readonly mostCost: number;
}

export interface ChainProblem {
  readonly slotCount: number;
  /** Day number of each slot, rising along the axis. */
  readonly dayOfSlot: Int32Array;
  /** Number of the half day of each slot, rising along the axis. */
  readonly halfDayOfSlot: Int32Array;
  readonly visits: readonly ChainVisit[];
  readonly deliveryVisit: number;
  readonly lags: readonly ChainLag[];
  readonly phases: readonly ChainPhase[];
  /** Whether a chain may change clinics, or stays in one. */
  readonly mixing: 'one-clinic' | 'any-clinic';
  /** Clinic and clinician of the last visit before the first one listed, so that a change at once counts; `null` if none. */
  readonly seenBy: { readonly clinic: string; readonly clinician: string } | null;
  readonly placement: PlacementRule;
}

/** The four axes of the Pareto front, all to be small. */
export interface ChainVector {
  /** `dayOfSlot` at the delivery visit's start. */
  readonly deliveryDay: number;
  readonly wishesBroken: number;
  readonly clinicianChanges: number;
  readonly clinicChanges: number;
}

export interface PlannedVisit {
  readonly visit: string;
  readonly startSlot: number;
  readonly endSlot: number;
  readonly clinic: string;
  readonly clinician: string;
  readonly chair: string;
  readonly assistant: string | null;
  /** One unit per kit need, with the slot at which it is ready again. */
  readonly kits: readonly { readonly kind: string; readonly unit: string; readonly readySlot: number }[];
}

export interface PlannedOperation {
  readonly phase: string;
  readonly operation: string;
  readonly lab: string;
  readonly centre: string;
  readonly startSlot: number;
  readonly endSlot: number;
  /** `null` when the operation holds no place. */
  readonly place: string | null;
  /** The batch it joins, else `null`. */
  readonly batch: string | null;
  /** Ranges for which the place is held; empty when it joins a batch or holds none. */
  readonly holds: readonly { readonly startSlot: number; readonly endSlot: number }[];
}

/** A complete plan: every visit and every operation. */
export interface ChainPlan {
  readonly vector: ChainVector;
  readonly ties: { readonly bufferCost: number; readonly placementCost: number; readonly startSum: number };
  readonly visits: readonly PlannedVisit[];
  readonly operations: readonly PlannedOperation[];
}

/** Why a plan is offered; the caller words it. `value` is the day, count or slots that the code speaks of. */
export interface OfferReason {
  readonly code:
    | 'earliest-delivery'
    | 'every-visit-as-wished'
    | 'fewest-wishes-broken'
    | 'same-clinician'
    | 'fewest-clinician-changes'
    | 'one-clinic'
    | 'fewest-clinic-changes'
    | 'smallest-buffer-slots'
    | 'another-choice';
  readonly value: number;
}

export interface ChainOffer extends ChainPlan {
  readonly reasons: readonly OfferReason[];
}

export interface ChainOffers {
  /** Every vector that no complete plan beats, by delivery day, then wishes, clinician changes, clinic changes. */
  readonly front: readonly ChainVector[];
  /** Any two differ in (day, half day, clinician) at two visits or more up to delivery. */
  readonly offers: readonly ChainOffer[];
}
