import { DomainError } from '@archwright/kernel';
import { impactOf } from '../scoring/impact-answers.js';
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
}

type SummaryOf = (code: string, where?: Pick<Reading, 'arch' | 'side'>) => ReadingSummary | null;

/** Values computed from what was captured; none where a part is missing or the parts were measured differently. */
export function derivedValues(readings: readonly Reading[]): DerivedValue[] {
  const summaryOf: SummaryOf = (code, { arch, side } = {}) => {
    const own = readings.filter((reading) => reading.code === code && reading.arch === arch && reading.side === side);
    return own.length === 0 ? null : summariseReadings(measurementByCode(code).name, own);
  };
  return [
    derived('interocclusal-rest-distance', () => restDistance(summaryOf)),
    derived('change-of-occlusal-vertical-dimension', () => changeAgainstOld(summaryOf)),
    derived('lower-to-middle-third', () => thirds(summaryOf)),
    derived('canine-line-asymmetry', () => canineAsymmetry(summaryOf)),
    derived('kapur-sum', () => kapurOf(summaryOf)?.total ?? null),
    derived('oral-health-impact', () => oralHealthImpact(readings)),
  ].flat();
}

/** A comparison that the measures refuse is shown by the checks, with its reason; here is no number to show. */
function derived(code: string, compute: () => number | null): DerivedValue[] {
  try {
    const value = compute();
    const measurement = measurementByCode(code);
    if (value === null || !('unit' in measurement)) return [];
    return [{ code, name: measurement.name, value: Math.round(value * 10) / 10, unit: measurement.unit }];
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
