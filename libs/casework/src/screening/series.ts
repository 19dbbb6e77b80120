import { screenSeries, type Drift, type SeriesSettings } from '@archwright/screening';
import type { StageValue } from './stage-values.js';

/** A clinic's or a device's series of fewer people would be a chart of one of them. Project default. */
const FEWEST_PEOPLE = 3;

/** Whose readings follow one another. */
export interface Series {
  readonly kind: 'own-series' | 'clinic-series' | 'device-series';
  /** The person, clinic or device. */
  readonly ownerId: string;
  readonly values: readonly StageValue[];
}

/** A drift, and the values at which it was found and began. */
export interface FoundDrift {
  readonly series: Series;
  readonly drift: Drift;
  readonly found: StageValue;
  readonly since: StageValue;
}

/**
 * The drifts of each person's, each clinic's and each device's readings of one subject. Clinics and devices whose readings
 * fewer than three people took have no series of their own.
 *
 * @param values oldest first
 */
export function findDrifts(values: readonly StageValue[], settings: SeriesSettings): FoundDrift[] {
  return seriesOf(values).flatMap((series) => {
    const screened = screenSeries(
      series.values.map(({ value }) => value),
      settings,
    );
    if (screened.outcome === 'too-few') return [];
    return screened.drifts.map((drift): FoundDrift => {
      const [found, since] = [series.values[drift.foundAt], series.values[drift.since]];
      if (found === undefined || since === undefined) throw new Error('A drift lies within its series.');
      return { series, drift, found, since };
    });
  });
}

function seriesOf(values: readonly StageValue[]): Series[] {
  const of = (kind: Series['kind'], ownerOf: (value: StageValue) => string | null): Series[] =>
    [...byOwner(values, ownerOf)].map(([ownerId, own]) => ({ kind, ownerId, values: own }));
  const isShared = ({ values: own }: Series) => new Set(own.map(({ recordedBy }) => recordedBy)).size >= FEWEST_PEOPLE;
  return [
    ...of('own-series', ({ recordedBy }) => recordedBy),
    ...of('clinic-series', ({ clinicId }) => clinicId).filter(isShared),
    ...of('device-series', ({ deviceId }) => deviceId).filter(isShared),
  ];
}

function byOwner(
  values: readonly StageValue[],
  ownerOf: (value: StageValue) => string | null,
): Map<string, StageValue[]> {
  const owned = new Map<string, StageValue[]>();
  for (const value of values) {
    const owner = ownerOf(value);
    if (owner === null) continue;
    const known = owned.get(owner);
    if (known === undefined) owned.set(owner, [value]);
    else known.push(value);
  }
  return owned;
}
