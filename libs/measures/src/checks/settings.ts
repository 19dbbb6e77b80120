import { measurementByCode } from '../catalogue/catalogue.js';
import { OverlayError } from '../errors.js';
import type { GroupRange, NumberMeasurement, Sex, SkeletalClass } from '../measurement.js';
import { projectDefault, type ClosedRange, type Source } from '../standing.js';
import { RULE_LIMITS, type LimitCode, type RuleLimit } from './limits.js';
import { USUAL_SUBJECTS, usualKey } from './usual-subjects.js';

/** A practice's own usual ranges and project defaults. Plausible ranges and fixed limits are out of its reach. */
export interface PracticeOverlay {
  /** Counted up by the practice at each change; stands in every verdict. */
  readonly version: number;
  /** By the keys of {@link USUAL_SUBJECTS}, or a short code such as `IRD`. */
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
  const own: Source = projectDefault(`the practice’s own setting, version ${String(overlay?.version ?? 0)}`);
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
      const group = groupFor(measurement, person, region);
      // A region keeps its own range; of people the practice's one range for all takes the place of published groups.
      const general = group?.region === undefined ? usual.get(measurement.code) : undefined;
      const override = (group === null ? undefined : usual.get(usualKey(measurement, group))) ?? general;
      if (override !== undefined) return { range: override, source: own };
      const range = group?.range ?? measurement.usual;
      return range === null ? null : { range, source: sourceOf(measurement.source, group) };
    },
  };
}

const PEOPLE: Readonly<Record<Sex, string>> = { female: 'women', male: 'men' };

/** Says which people a range was given for, where it was chosen by the patient's sex. */
const sourceOf = (source: Source, group: GroupRange | null): Source =>
  group?.sex === undefined ? source : { ...source, text: `${source.text}; the range given for ${PEOPLE[group.sex]}` };

function usualOverride(key: string, range: ClosedRange): [string, ClosedRange] {
  const [code = '', group] = key.split('/');
  const { code: full } = measurementByCode(code);
  const wanted = group === undefined ? full : `${full}/${group}`;
  const subject = USUAL_SUBJECTS.find((one) => one.key === wanted);
  if (subject === undefined) throw new OverlayError(key, 'it has no range');
  if (!Number.isFinite(range.min) || !Number.isFinite(range.max) || range.min > range.max) {
    throw new OverlayError(key, 'the range needs a finite lower end that is not above its upper end');
  }
  const { plausible, unit } = subject.measurement;
  if (range.min < plausible.min || range.max > plausible.max) {
    throw new OverlayError(
      key,
      `it reaches past what is possible, ${String(plausible.min)} to ${String(plausible.max)} ${unit}`,
    );
  }
  return [wanted, range];
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

/** The group range that fits; null where the measurement's general range holds. */
function groupFor(measurement: NumberMeasurement, person: Person, region: string | undefined): GroupRange | null {
  const fitting = measurement.usualByGroup?.find(
    (candidate) =>
      (candidate.sex === undefined || candidate.sex === person.sex) &&
      (candidate.region === undefined || candidate.region === region) &&
      (candidate.skeletalClass === undefined || candidate.skeletalClass === person.skeletalClass),
  );
  return fitting ?? null;
}
