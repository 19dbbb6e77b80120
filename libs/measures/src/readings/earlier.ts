import { measurementByCode } from '../catalogue/catalogue.js';
import type { Reading } from './reading.js';

/** A new denture must still have it at the next visit; it is compared, never taken over. */
const COMPARED = ['occlusal-vertical-dimension'];

/** What one reading is about: a later one of the same subject takes its place. */
export const subjectOf = ({ code, arch, side, region }: Omit<Reading, 'value'>): string =>
  [code, arch ?? '', side ?? '', region ?? ''].join('|');

/** Whether the checks of later visits want to know it. */
export const countsLater = (code: string): boolean =>
  COMPARED.includes(code) || measurementByCode(code).carried === true;

/** Readings of a visit, with those of earlier ones that go on with the patient and were not taken again. */
export function withEarlier(readings: readonly Reading[], earlier: readonly Reading[]): readonly Reading[] {
  const taken = new Set(readings.map(subjectOf));
  const carried = earlier.filter(
    (reading) => measurementByCode(reading.code).carried === true && !taken.has(subjectOf(reading)),
  );
  return [...readings, ...carried];
}
