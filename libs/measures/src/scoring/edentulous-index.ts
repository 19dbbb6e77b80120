import { measurementByCode } from '../catalogue/catalogue.js';
import { checkValue } from '../readings/reading.js';

export type EdentulousClass = 1 | 2 | 3 | 4;

export interface HeightClass {
  readonly class: EdentulousClass;
  /** The height that was classed, whole mm, halves rounded up. */
  readonly roundedMm: number;
  /** Set when rounding moved the value: the published bands leave gaps between whole millimetres. */
  readonly note: string | null;
}

/**
 * Class by the lowest height of the mandible: I from 21 mm, II 16 to 20, III 11 to 15, IV to 10.
 *
 * @param heightMm corrected for the image's magnification
 * @throws {ImplausibleValueError} outside the catalogue's plausible range
 * @see McGarry, J Prosthodont 1999;8:27
 */
export function classByMandibularHeight(heightMm: number): HeightClass {
  checkValue('mandibular-bone-height', heightMm);
  const roundedMm = Math.round(heightMm);
  const note =
    roundedMm === heightMm
      ? null
      : `${String(heightMm)} mm was rounded to ${String(roundedMm)} mm: the classes are given in whole mm.`;
  return { class: roundedMm >= 21 ? 1 : roundedMm >= 16 ? 2 : roundedMm >= 11 ? 3 : 4, roundedMm, note };
}

/**
 * The index is the class of the worst criterion.
 *
 * @param criteria classes of bone height, maxillary form, muscle attachment, jaw relation and others; at least one
 */
export function edentulousClass(criteria: readonly [EdentulousClass, ...EdentulousClass[]]): EdentulousClass {
  return criteria.reduce((worst, one) => (one > worst ? one : worst));
}

/** Label of a ridge class or stomatitis type, `IV knife-edge`. @throws {InvalidValueError} for a class the scale does not have */
export function gradeLabel(scale: 'cawood-howell-class' | 'atwood-order' | 'newton-stomatitis', grade: number): string {
  const code = String(checkValue(scale, String(grade)));
  const measurement = measurementByCode(scale);
  const option = measurement.kind === 'enum' ? measurement.options.find((one) => one.code === code) : undefined;
  return option?.label ?? code;
}
