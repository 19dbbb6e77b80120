import { measurementByCode } from '../catalogue/catalogue.js';
import { OverlayError } from '../errors.js';
import type { NumberMeasurement, Sex, SkeletalClass } from '../measurement.js';
import { projectDefault, type ClosedRange, type Source } from '../standing.js';
import { RULE_LIMITS, type LimitCode, type RuleLimit } from './limits.js';

/** A practice's own usual ranges and project defaults. Plausible ranges and fixed limits are out of its reach. */
export interface PracticeOverlay {
  /** Counted up by the practice at each change; stands in every verdict. */
  readonly version: number;
  readonly usual?: Readonly<Record<string, ClosedRange>>;
  readonly limits?: Readonly<Record<string, number>>;
}

/** A person's facts that choose between published usual ranges. */
export interface Person {
  readonly sex?: Sex;
  readonly skeletalClass?: SkeletalClass;
}

export interface UsualRange {
  readonly range: ClosedRange;
  readonly source: Source;
}

export interface CheckSettings {
  /** Null without an overlay. */
  readonly practiceVersion: number | null;
  limit(code: LimitCode): RuleLimit;
  /** Null when the measurement has no usual range. */
  usual(measurement: NumberMeasurement, person: Person, region?: string): UsualRange | null;
}

/**
 * The catalogue's ranges and limits with a practice's overlay on top.
 *
 * @throws {OverlayError} when the overlay is reversed, not finite, reaches past a plausible range or moves a fixed limit;
 *   {@link UnknownMeasurementError} for a code the catalogue does not have
 */
export function checkSettings(overlay: PracticeOverlay | null = null): CheckSettings {
  const usual = new Map(Object.entries(overlay?.usual ?? {}).map(([code, range]) => usualOverride(code, range)));
  const limits = new Map<string, RuleLimit>(RULE_LIMITS.map((limit) => [limit.code, limit]));
  const own: Source = projectDefault(`the practice's own setting, version ${String(overlay?.version ?? 0)}`);
  for (const [code, value] of Object.entries(overlay?.limits ?? {}))
    limits.set(code, limitOverride(limits.get(code), code, value, own));
  return {
    practiceVersion: overlay?.version ?? null,
    limit(code) {
      const limit = limits.get(code);
      if (limit === undefined) throw new Error(`Rule limit ${code} is not in the table`);
      return limit;
    },
    usual(measurement, person, region) {
      const override = usual.get(measurement.code);
      if (override !== undefined) return { range: override, source: own };
      const range = publishedUsual(measurement, person, region);
      return range === null ? null : { range, source: measurement.source };
    },
  };
}

function usualOverride(code: string, range: ClosedRange): [string, ClosedRange] {
  const measurement = measurementByCode(code);
  if (measurement.kind !== 'number' && measurement.kind !== 'count') throw new OverlayError(code, 'it has no range');
  if (!Number.isFinite(range.min) || !Number.isFinite(range.max) || range.min > range.max) {
    throw new OverlayError(code, 'the range needs a finite lower end that is not above its upper end');
  }
  const { plausible } = measurement;
  if (range.min < plausible.min || range.max > plausible.max) {
    throw new OverlayError(
      code,
      `it reaches past what is possible, ${String(plausible.min)} to ${String(plausible.max)} ${measurement.unit}`,
    );
  }
  return [measurement.code, range];
}

function limitOverride(limit: RuleLimit | undefined, code: string, value: number, source: Source): RuleLimit {
  if (limit === undefined) throw new OverlayError(code, 'no rule has this limit');
  const { adjustable } = limit;
  if (adjustable === null) throw new OverlayError(code, 'this limit is fixed');
  if (!(value >= adjustable.min && value <= adjustable.max)) {
    throw new OverlayError(code, `accepted from ${String(adjustable.min)} to ${String(adjustable.max)} ${limit.unit}`);
  }
  return { ...limit, value, source };
}

function publishedUsual(
  measurement: NumberMeasurement,
  person: Person,
  region: string | undefined,
): ClosedRange | null {
  const group = measurement.usualByGroup?.find(
    (candidate) =>
      (candidate.sex === undefined || candidate.sex === person.sex) &&
      (candidate.region === undefined || candidate.region === region) &&
      (candidate.skeletalClass === undefined || candidate.skeletalClass === person.skeletalClass),
  );
  return group?.range ?? measurement.usual;
}
