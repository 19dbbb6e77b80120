import { InvalidValueError } from '../errors.js';
import { requireSameMethod, tidy, type ReadingSummary } from '../readings/summary.js';

/** What two vertical dimensions must share before one is taken from the other. */
const VERTICAL_KEYS = ['landmarks', 'posture'] as const;

function requireLengthMm(what: string, value: number): void {
  if (!Number.isFinite(value) || value <= 0)
    throw new InvalidValueError('not-finite', what, value, 'a length above 0 mm');
}

/**
 * Interocclusal rest distance: vertical dimension at rest minus occlusal vertical dimension.
 *
 * @param dimensions rest and occlusal vertical dimension, mm, on the same two marks and in the same posture
 * @returns distance in mm; zero or negative when no rest distance is left
 * @throws {InvalidValueError} when a value is not a finite length above 0 mm
 * @see Glossary of Prosthodontic Terms, "interocclusal rest distance"
 */
export function interocclusalRestDistanceMm(dimensions: {
  readonly restMm: number;
  readonly occlusalMm: number;
}): number {
  requireLengthMm('vertical-dimension-at-rest', dimensions.restMm);
  requireLengthMm('occlusal-vertical-dimension', dimensions.occlusalMm);
  return tidy(dimensions.restMm - dimensions.occlusalMm);
}

/**
 * Difference of two summaries, first minus second, mm.
 *
 * @throws {DifferentMethodError} when landmarks or posture differ
 */
export function differenceOfSummaries(what: string, first: ReadingSummary, second: ReadingSummary): number {
  requireSameMethod(what, first.method, second.method, VERTICAL_KEYS);
  return tidy(first.median - second.median);
}

/**
 * Lower facial third as a share of the middle one.
 *
 * @returns per cent; 100 when both are equal
 * @throws {InvalidValueError} when a length is not above 0 mm
 */
export function lowerToMiddleThirdPercent(thirds: { readonly lowerMm: number; readonly middleMm: number }): number {
  requireLengthMm('lower-facial-third', thirds.lowerMm);
  requireLengthMm('middle-facial-third', thirds.middleMm);
  return tidy((100 * thirds.lowerMm) / thirds.middleMm);
}

/** Right minus left, mm: positive when the patient's right side is wider. */
export function asymmetryMm(sides: { readonly rightMm: number; readonly leftMm: number }): number {
  requireLengthMm('right side', sides.rightMm);
  requireLengthMm('left side', sides.leftMm);
  return tidy(sides.rightMm - sides.leftMm);
}
