import type { ClosedRange, Source } from './standing.js';

/** The kinds of visit at which something is captured; a combined visit has two of them. */
export const MILESTONE_KINDS = [
  'examination',
  'final-impression',
  'jaw-relation',
  'trial',
  'placement',
  'review',
] as const;
export type MilestoneKind = (typeof MILESTONE_KINDS)[number];

/** A path's milestone as kinds of capture: a combined visit has two, a milestone without captures of its own has none. */
export function milestoneKindsOf(milestone: string): readonly MilestoneKind[] {
  const combined: Readonly<Record<string, readonly MilestoneKind[]>> = {
    'preliminary-impression': ['examination'],
    'impression-and-jaw-relation': ['final-impression', 'jaw-relation'],
    'attachment-pick-up': ['placement'],
    recall: ['review'],
  };
  return combined[milestone] ?? MILESTONE_KINDS.filter((kind) => kind === milestone);
}

export type Arch = 'upper' | 'lower';
export type Side = 'right' | 'left';
export type Sex = 'female' | 'male';
export type SkeletalClass = 'class-i' | 'class-ii' | 'class-iii';
export type Unit = 'mm' | 'deg' | 'percent' | 'points' | 'count';

/** What must be stated with a value, and must match before two values are compared. */
export interface MethodKey {
  readonly key: string;
  readonly question: string;
  readonly options: readonly string[];
  /** A value without it is refused; a key that is not required still has to match when stated. */
  readonly required: boolean;
}

interface MeasurementCommon {
  readonly code: string;
  /** The short code of the paper form; accepted wherever `code` is. */
  readonly abbreviation?: string;
  readonly name: string;
  readonly group: 'vertical' | 'plane' | 'widths' | 'bases' | 'grades' | 'function' | 'agreement' | 'tracing';
  /** One value per denture. */
  readonly perArch?: boolean;
  /** One value per side of the patient. */
  readonly perSide?: boolean;
  /** One value per named region. */
  readonly regions?: readonly string[];
  readonly method: readonly MethodKey[];
  readonly capturedAt: readonly MilestoneKind[];
  /** Belongs to the patient rather than to the visit: a later visit goes on with it until it is taken again. */
  readonly carried?: boolean;
  /** One answer of a score: kept and added up, never compared with others by itself. */
  readonly isAnswer?: boolean;
  /** Computed from other values; typing it is refused. */
  readonly derived?: boolean;
  readonly source: Source;
  readonly caution: string;
}

/** A usual range that holds for one group of people only. */
export interface GroupRange {
  readonly sex?: Sex;
  readonly region?: string;
  readonly skeletalClass?: SkeletalClass;
  readonly range: ClosedRange;
}

export interface NumberMeasurement extends MeasurementCommon {
  readonly kind: 'number' | 'count';
  readonly unit: Unit;
  /** Smallest step in which it is told apart, in its unit, where that is not the half of one that an eye reads. */
  readonly resolution?: number;
  /** Outside: refused, measured and asked again. No practice may change it. */
  readonly plausible: ClosedRange;
  /** Outside: caution. Null when no usual range is known. */
  readonly usual: ClosedRange | null;
  readonly usualByGroup?: readonly GroupRange[];
}

export interface EnumOption {
  readonly code: string;
  readonly label: string;
}

export interface EnumMeasurement extends MeasurementCommon {
  readonly kind: 'enum';
  readonly options: readonly EnumOption[];
  /** Other answers are a caution. Null when every answer is ordinary. */
  readonly usualOptions: readonly string[] | null;
}

export interface BooleanMeasurement extends MeasurementCommon {
  readonly kind: 'boolean';
  /** The other answer is a caution. Null when both are ordinary. */
  readonly usualAnswer: boolean | null;
}

export type Measurement = NumberMeasurement | EnumMeasurement | BooleanMeasurement;

/** Landmarks of a vertical dimension on the skin: two values are compared only on the same pair. */
export const VERTICAL_LANDMARKS: MethodKey = {
  key: 'landmarks',
  question: 'Which two skin marks?',
  options: ['subnasale-gnathion', 'nose-tip-chin', 'other-marked-points'],
  required: true,
};

export const POSTURE: MethodKey = {
  key: 'posture',
  question: 'Posture while measuring?',
  options: ['upright-unsupported', 'upright-supported', 'reclined'],
  required: false,
};

/** Ways to record centric relation other than tracing. */
export const CENTRIC_RELATION_METHODS = [
  'bimanual-guidance',
  'chin-point-guidance',
  'swallowing',
  'functional',
  'wax-record',
] as const;
export type CentricRelationMethod = (typeof CENTRIC_RELATION_METHODS)[number];
