import { measurementByCode } from '../catalogue/catalogue.js';
import type { Arch, CentricRelationMethod, MilestoneKind, Side, SkeletalClass } from '../measurement.js';
import { withEarlier } from '../readings/earlier.js';
import { checkReading, type Reading, type ReadingValue } from '../readings/reading.js';
import { summariseReadings, type ReadingSummary } from '../readings/summary.js';
import type { RuleLimit, LimitCode } from './limits.js';
import type { CheckSettings, Person } from './settings.js';

/** A vertical dimension together with the marks it was measured on. */
export interface MarkedDimension {
  readonly valueMm: number;
  readonly landmarks: string;
}

export const TRACING_FORMS = [
  'typical',
  'flat',
  'asymmetric',
  'rounded',
  'miniature',
  'dorsally-extended',
  'interrupted',
] as const;
export type TracingForm = (typeof TRACING_FORMS)[number];

/** The right movement lies on the patient's left; the arms do not lead forward. */
export type TracingDoubt = 'arms-swapped' | 'turned';

/** Places in which several closures ended: their scatter is the root mean square about the mean. */
export interface ClosureStatistics {
  readonly count: number;
  readonly rmsMm: number;
  readonly maxPairMm: number;
}

/** One needle-point tracing of this visit, as entered or as evaluated. Numbers that are not known are left out. */
export interface TracingEntry {
  readonly apex: 'single' | 'none' | 'double';
  readonly form?: TracingForm;
  readonly basesMoved: boolean;
  /** Rims or bases touched while tracing. */
  readonly contact: boolean;
  readonly pain: boolean;
  /** The clinician changed the vertical dimension after this tracing. */
  readonly verticalDimensionChangedAfter?: boolean;
  /** Occlusal vertical dimension at which it was traced. */
  readonly occlusalVerticalDimension?: MarkedDimension;
  readonly roundingRadiusMm?: number;
  readonly armRmsMm?: number;
  readonly asymmetryDeg?: number;
  readonly dorsalExtensionMm?: number;
  readonly closures?: ClosureStatistics;
  readonly offsetMm?: number;
  /** What the drawing itself says against the stated needle or view; empty or left out when nothing does. */
  readonly doubts?: readonly TracingDoubt[];
}

/** A centric relation record by another method than tracing: an equal, not a failure. */
export interface CentricRelationRecord {
  readonly method: CentricRelationMethod;
  readonly closures?: ClosureStatistics;
  readonly occlusalVerticalDimension?: MarkedDimension;
  readonly verticalDimensionChangedAfter?: boolean;
}

/** What the checks need to know besides readings. */
export interface StageFacts {
  readonly milestones: readonly MilestoneKind[];
  /** Arches that get a denture on this path. */
  readonly arches: readonly Arch[];
  readonly person?: Person;
  /** The latest of each that earlier visits of the case took and later ones are compared with. */
  readonly earlier?: readonly Reading[];
  /** In the order of taking, this visit only. */
  readonly tracings?: readonly TracingEntry[];
  /** True once parts of a tracing set are counted in: it is about to be mounted. */
  readonly tracingPlanned?: boolean;
  readonly otherCentricRelation?: readonly CentricRelationRecord[];
}

export interface Where {
  readonly arch?: Arch;
  readonly side?: Side;
  readonly region?: string;
}

const matches = (reading: Reading, where: Where): boolean =>
  (where.arch === undefined || reading.arch === where.arch) &&
  (where.side === undefined || reading.side === where.side) &&
  (where.region === undefined || reading.region === where.region);

/** The readings and facts of one visit, looked up by the rules. Every reading is checked once, on the way in. */
export class Stage {
  /** Of this visit alone. */
  readonly readings: readonly Reading[];
  private readonly earlier: readonly Reading[];
  private readonly known: readonly Reading[];

  constructor(
    readings: readonly Reading[],
    readonly facts: StageFacts,
    readonly settings: CheckSettings,
  ) {
    this.readings = readings.map(checkReading);
    this.earlier = facts.earlier ?? [];
    this.known = withEarlier(this.readings, this.earlier);
  }

  /** Null when nothing was captured. @throws {DifferentMethodError} for readings that were not measured alike */
  summary(code: string, where: Where = {}): ReadingSummary | null {
    const found = this.of(code, where);
    return found.length === 0 ? null : summariseReadings(measurementByCode(code).name, found);
  }

  /** The last answer captured, null for none. */
  answer(code: string, where: Where = {}): ReadingValue | null {
    return this.of(code, where).at(-1)?.value ?? null;
  }

  of(code: string, where: Where = {}): readonly Reading[] {
    return this.known.filter((reading) => reading.code === code && matches(reading, where));
  }

  /** What an earlier visit had; null when none did. */
  before(code: string): ReadingSummary | null {
    const found = this.earlier.filter((reading) => reading.code === code);
    return found.length === 0 ? null : summariseReadings(measurementByCode(code).name, found);
  }

  limit(code: LimitCode): RuleLimit {
    return this.settings.limit(code);
  }

  /** The stated person; a skeletal class captured in this visit completes it. */
  get person(): Person {
    const captured = this.answer('skeletal-class');
    return captured === null
      ? (this.facts.person ?? {})
      : { ...this.facts.person, skeletalClass: captured as SkeletalClass };
  }

  isAt(...kinds: readonly MilestoneKind[]): boolean {
    return this.facts.milestones.some((kind) => kinds.includes(kind));
  }
}
