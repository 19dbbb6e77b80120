import { ToothCodeError } from '../errors.js';

/** Areas of ISO 3950 that a complete denture covers (from memory of the standard). */
export const AREA_CODES = {
  '00': 'whole mouth',
  '01': 'maxilla',
  '02': 'mandible',
  '03': 'upper right sextant',
  '04': 'upper anterior sextant',
  '05': 'upper left sextant',
  '06': 'lower left sextant',
  '07': 'lower anterior sextant',
  '08': 'lower right sextant',
  '10': 'upper right quadrant',
  '20': 'upper left quadrant',
  '30': 'lower left quadrant',
  '40': 'lower right quadrant',
} as const;
export type AreaCode = keyof typeof AREA_CODES;

const PERMANENT = [1, 2, 3, 4].flatMap((quadrant) => range(8).map((tooth) => `${String(quadrant)}${String(tooth)}`));
const DECIDUOUS = [5, 6, 7, 8].flatMap((quadrant) => range(5).map((tooth) => `${String(quadrant)}${String(tooth)}`));

function range(length: number): number[] {
  return Array.from({ length }, (_, index) => index + 1);
}

/** The 32 permanent teeth of ISO 3950, 11 to 48. */
export const PERMANENT_TEETH: readonly string[] = PERMANENT;

/** True for a permanent or deciduous tooth code of ISO 3950. */
export function isTooth(code: string): boolean {
  return PERMANENT.includes(code) || DECIDUOUS.includes(code);
}

function parts(code: string): { quadrant: number; tooth: number } {
  if (!isTooth(code))
    throw new ToothCodeError(code, 'ISO 3950: 11 to 48 with second digit 1 to 8, deciduous 51 to 85 with 1 to 5');
  return { quadrant: Number(code[0]), tooth: Number(code[1]) };
}

/**
 * The Universal (US) number of a permanent tooth or letter of a deciduous one, for import and display only.
 *
 * @throws {ToothCodeError} for what is no ISO 3950 tooth
 */
export function toUniversal(code: string): string {
  const { quadrant, tooth } = parts(code);
  const isPermanent = quadrant <= 4;
  const perQuadrant = isPermanent ? 8 : 5;
  const index = isPermanent ? quadrant - 1 : quadrant - 5;
  // Counting starts at the last upper right tooth and runs round: towards the midline in the first and third quadrant.
  const position = index * perQuadrant + (index % 2 === 0 ? perQuadrant + 1 - tooth : tooth);
  return isPermanent ? String(position) : String.fromCharCode(64 + position);
}

/**
 * The ISO 3950 code of a Universal number 1 to 32 or letter A to T.
 *
 * @throws {ToothCodeError} for anything else
 */
export function fromUniversal(universal: string): string {
  const wanted = universal.trim().toUpperCase();
  const found = [...PERMANENT, ...DECIDUOUS].find((code) => toUniversal(code) === wanted);
  if (found === undefined) throw new ToothCodeError(universal, 'Universal numbers 1 to 32 or letters A to T');
  return found;
}

/** ISO 3950 area of complete dentures: upper 01, lower 02, both 00. */
export function areaOfArches(arches: readonly ('upper' | 'lower')[]): AreaCode {
  const [upper, lower] = [arches.includes('upper'), arches.includes('lower')];
  if (upper && lower) return '00';
  if (upper) return '01';
  if (lower) return '02';
  throw new ToothCodeError('', 'at least one arch');
}
