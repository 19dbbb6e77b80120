import type { ClosedDays, Interval, LabDays, LocalRule } from '@archwright/calendar';

/** One chair, clinician, assistant or kit: what is already held or booked, live holds of other cases included. */
export interface ResourceSnapshot {
  readonly id: string;
  readonly busy: readonly Interval[];
}

export interface ChairSnapshot extends ResourceSnapshot {
  readonly label: string;
  /** Room for a wheelchair beside it. */
  readonly wheelchairRoom: boolean;
}

export interface ClinicianSnapshot extends ResourceSnapshot {
  readonly name: string;
  readonly skills: readonly string[];
  readonly working: readonly LocalRule[];
  readonly absences: readonly (ClosedDays | Interval)[];
}

export interface AssistantSnapshot extends ResourceSnapshot {
  readonly working: readonly LocalRule[];
  readonly absences: readonly (ClosedDays | Interval)[];
}

export interface KitSnapshot extends ResourceSnapshot {
  readonly code: string;
  readonly reprocessingMinutes: number;
}

export interface ClinicSnapshot {
  readonly id: string;
  readonly name: string;
  readonly zone: string;
  readonly opening: readonly LocalRule[];
  readonly closures: readonly (ClosedDays | Interval)[];
  /** Minutes kept for sore spots and breakages that are not yet released. */
  readonly protected: readonly Interval[];
  readonly chairs: readonly ChairSnapshot[];
  readonly clinicians: readonly ClinicianSnapshot[];
  readonly assistants: readonly AssistantSnapshot[];
  readonly kits: readonly KitSnapshot[];
}

/** One numbered place of a work centre. */
export interface PlaceSnapshot extends ResourceSnapshot {
  readonly label: string;
}

/** A curing cycle or print plate already booked that still takes members. */
export interface OpenBatchSnapshot {
  readonly id: string;
  readonly placeId: string;
  readonly kind: 'curing-cycle' | 'print-plate';
  readonly startMs: number;
  readonly endMs: number;
}

export interface WorkCentreSnapshot {
  readonly id: string;
  readonly code: string;
  readonly working: readonly LocalRule[];
  readonly closures: readonly (ClosedDays | Interval)[];
  readonly places: readonly PlaceSnapshot[];
  readonly openBatches: readonly OpenBatchSnapshot[];
}

export interface LaboratorySnapshot {
  readonly id: string;
  readonly name: string;
  /** Zone, cut-off and the days on which it works; turnarounds in lab working days count on them. */
  readonly labDays: LabDays;
  /** Clinics under the same roof: work is carried over at once, without a courier. */
  readonly sameRoofClinicIds: readonly string[];
  readonly workCentres: readonly WorkCentreSnapshot[];
}

/** A courier between one clinic and one laboratory. `minutes` of a timetable is how long a parcel is under way. */
export interface CourierSnapshot {
  readonly id: string;
  readonly clinicId: string;
  readonly laboratoryId: string;
  readonly toLab: LocalRule;
  readonly toClinic: LocalRule;
}

/** Everything shared that planning one case reads, as it stood at one instant. */
export interface PracticeSnapshot {
  readonly clinics: readonly ClinicSnapshot[];
  readonly laboratories: readonly LaboratorySnapshot[];
  readonly couriers: readonly CourierSnapshot[];
}

export interface PatientSnapshot {
  readonly id: string;
  readonly zone: string;
  /** Other visits of the same patient, with the way there and back. */
  readonly busy: readonly Interval[];
  /** Of these the time in a chair, visits of today that are over included. */
  readonly otherVisits: readonly Interval[];
  readonly wishes: {
    /** ISO weekdays, Monday 1; empty: any. */
    readonly weekdays: readonly number[];
    readonly from: string | null;
    readonly to: string | null;
  };
  /** Dates on which the patient cannot come at all. */
  readonly unavailableOn: readonly string[];
  /** Hours at which the person who brings the patient can come; empty: no such limit. */
  readonly escort: readonly LocalRule[];
  readonly wheelchairRoom: boolean;
  /** Kept free before and after each visit, in minutes each way. */
  readonly travelMinutes: number;
  /** Most minutes in the chair on one day; null: no limit. */
  readonly chairMinutesPerDay: number | null;
  /** The clinician's way to the patient, each way, when visits are made at home; null: the patient comes to the clinic. */
  readonly homeTravelMinutes: number | null;
}

/**
 * A stage that has happened, is under way, or keeps its booked place. The practice snapshot leaves out this case's own
 * occupancy, kept bookings included: they are given here.
 */
export interface FixedStage {
  readonly code: string;
  readonly startMs: number;
  readonly endMs: number;
  readonly clinicId: string;
  readonly clinicianId: string;
  /** Empty for a visit at the patient's home. */
  readonly chairId: string;
  /** The clinician's way of a visit at home, each way; null for one at the clinic. */
  readonly homeTravelMinutes: number | null;
}

/** A lab step that is done, started, or keeps its booked place. */
export interface FixedStep {
  readonly code: string;
  readonly startMs: number;
  readonly endMs: number;
  readonly laboratoryId: string;
  /** Null when it holds none. */
  readonly placeId: string | null;
}

/** What the patient and the practice accept for this case. */
export interface CaseWishes {
  /** Clinics the patient accepts; the search may propose others of the snapshot only as a way out. */
  readonly clinicIds: readonly string[];
  /** The clinician of the case, kept wherever that person has the skills; null: anyone with the skills. */
  readonly clinicianId: string | null;
  readonly laboratoryIds: readonly string[];
}
