import { DomainError } from '@archwright/kernel';
import { IMPACT_ANSWER, impactOf } from '../scoring/impact-answers.js';
import { kapurOf } from '../scoring/kapur-grades.js';
import { measurementByCode } from '../catalogue/catalogue.js';
import type { Reading } from '../readings/reading.js';
import { summariseReadings, type ReadingSummary } from '../readings/summary.js';
import {
  asymmetryMm,
  differenceOfSummaries,
  interocclusalRestDistanceMm,
  lowerToMiddleThirdPercent,
} from './derived.js';

/** A value that nobody types: worked out from others. */
export interface DerivedValue {
  readonly code: string;
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  /** The measurements that it was worked out from. */
  readonly from: readonly string[];
  /** How its parts were measured, as far as that says which values may be compared. */
  readonly method: Readonly<Record<string, string>>;
}

type SummaryOf = (code: string, where?: Pick<Reading, 'arch' | 'side'>) => ReadingSummary | null;

/** How one value is worked out; null where a part is missing. */
interface Derivation {
  readonly code: string;
  readonly from: readonly string[];
  /** Methods of the parts that values are compared by. */
  readonly keys: readonly string[];
  readonly compute: (summaryOf: SummaryOf, readings: readonly Reading[]) => number | null;
}

const VERTICAL_KEYS = ['landmarks', 'posture'];

const DERIVATIONS: readonly Derivation[] = [
  {
    code: 'interocclusal-rest-distance',
    from: ['vertical-dimension-at-rest', 'occlusal-vertical-dimension'],
    keys: VERTICAL_KEYS,
    compute: restDistance,
  },
  {
    code: 'change-of-occlusal-vertical-dimension',
    from: ['occlusal-vertical-dimension', 'old-denture-occlusal-vertical-dimension'],
    keys: VERTICAL_KEYS,
    compute: changeAgainstOld,
  },
  {
    code: 'lower-to-middle-third',
    from: ['lower-facial-third', 'middle-facial-third'],
    keys: [],
    compute: thirds,
  },
  { code: 'canine-line-asymmetry', from: ['canine-line-distance'], keys: [], compute: canineAsymmetry },
  {
    code: 'kapur-sum',
    from: ['kapur-retention', 'kapur-stability'],
    keys: ['variant'],
    compute: (summaryOf) => kapurOf(summaryOf)?.total ?? null,
  },
  {
    code: 'oral-health-impact',
    from: [IMPACT_ANSWER],
    keys: ['form'],
    compute: (_, readings) => oralHealthImpact(readings),
  },
];

/** Values computed from what was captured; none where a part is missing or the parts were measured differently. */
export function derivedValues(readings: readonly Reading[]): DerivedValue[] {
  const summaryOf: SummaryOf = (code, { arch, side } = {}) => {
    const own = readings.filter((reading) => reading.code === code && reading.arch === arch && reading.side === side);
    return own.length === 0 ? null : summariseReadings(measurementByCode(code).name, own);
  };
  return DERIVATIONS.flatMap((derivation) => derived(derivation, summaryOf, readings));
}

/** A comparison that the measures refuse is shown by the checks, with its reason; here is no number to show. */
function derived(
  { code, from, keys, compute }: Derivation,
  summaryOf: SummaryOf,
  readings: readonly Reading[],
): DerivedValue[] {
  try {
    const value = compute(summaryOf, readings);
    const measurement = measurementByCode(code);
    if (value === null || !('unit' in measurement)) return [];
    const stated = readings.filter((one) => from.includes(one.code)).flatMap((one) => Object.entries(one.method ?? {}));
    const method = Object.fromEntries(stated.filter(([key]) => keys.includes(key)));
    return [{ code, name: measurement.name, value: Math.round(value * 10) / 10, unit: measurement.unit, from, method }];
  } catch (error) {
    if (error instanceof DomainError) return [];
    throw error;
  }
}

function restDistance(summaryOf: SummaryOf): number | null {
  const rest = summaryOf('vertical-dimension-at-rest');
  const occlusal = summaryOf('occlusal-vertical-dimension');
  if (rest === null || occlusal === null) return null;
  differenceOfSummaries('Rest and occlusal vertical dimension', rest, occlusal);
  return interocclusalRestDistanceMm({ restMm: rest.median, occlusalMm: occlusal.median });
}

function changeAgainstOld(summaryOf: SummaryOf): number | null {
  const now = summaryOf('occlusal-vertical-dimension');
  const old = summaryOf('old-denture-occlusal-vertical-dimension');
  return now === null || old === null
    ? null
    : differenceOfSummaries('New and old occlusal vertical dimension', now, old);
}

function thirds(summaryOf: SummaryOf): number | null {
  const lower = summaryOf('lower-facial-third');
  const middle = summaryOf('middle-facial-third');
  return lower === null || middle === null
    ? null
    : lowerToMiddleThirdPercent({ lowerMm: lower.median, middleMm: middle.median });
}

function canineAsymmetry(summaryOf: SummaryOf): number | null {
  const right = summaryOf('canine-line-distance', { side: 'right' });
  const left = summaryOf('canine-line-distance', { side: 'left' });
  return right === null || left === null ? null : asymmetryMm({ rightMm: right.median, leftMm: left.median });
}

/** Of the 19-item form alone: totals of other forms are other values. */
function oralHealthImpact(readings: readonly Reading[]): number | null {
  const score = impactOf(readings);
  return score?.form === 'ohip-edent-19' ? score.total : null;
}
