import { InvalidValueError } from '../errors.js';
import { tidy } from '../readings/summary.js';

/** Border movements of the mandible, mm. */
export interface Excursions {
  readonly rightMm: number;
  readonly leftMm: number;
  readonly protrusionMm: number;
  readonly openingMm: number;
  /** Opening by pure rotation. */
  readonly hingeMm: number;
}

export interface ExcursionSummary {
  readonly lateralSumMm: number;
  readonly lateralToProtrusion: number;
  readonly openingToHinge: number;
}

/**
 * Sums and ratios of border movements: small ratios point to restriction on one side or in one direction.
 *
 * @throws {InvalidValueError} when a movement is not a finite length above 0 mm
 * @see Woelfel, J Adv Prosthodont 2014;6, 316 dentate students: 9.2, 9.4, 8.0, 51.2 and 17.2 mm
 */
export function excursionSummary(excursions: Excursions): ExcursionSummary {
  for (const [name, value] of Object.entries(excursions)) {
    if (!(Number.isFinite(value) && value > 0))
      throw new InvalidValueError('not-finite', name, value, 'a length above 0 mm');
  }
  const lateralSumMm = tidy(excursions.rightMm + excursions.leftMm);
  return {
    lateralSumMm,
    lateralToProtrusion: lateralSumMm / excursions.protrusionMm,
    openingToHinge: excursions.openingMm / excursions.hingeMm,
  };
}

/**
 * Classic lateral condylar setting of an articulator from the horizontal inclination: H / 8 + 12, both in degrees.
 * Criticised, and not independent of the articulator: shown for comparison, never a setting.
 *
 * @throws {InvalidValueError} for an inclination outside 0 to 75 degrees
 * @see textbook formula, from memory
 */
export function classicLateralSettingDeg(horizontalInclinationDeg: number): number {
  if (!(horizontalInclinationDeg >= 0 && horizontalInclinationDeg <= 75)) {
    throw new InvalidValueError('not-finite', 'horizontal inclination', horizontalInclinationDeg, '0 to 75 degrees');
  }
  return horizontalInclinationDeg / 8 + 12;
}
