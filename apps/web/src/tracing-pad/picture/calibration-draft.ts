import { typedNumber } from '../../stage/typed-number.js';
import type { Place } from '../pad-frame.js';
import type { Calibration } from './calibration.js';

/** Scale of a picture as it is being entered. */
export interface CalibrationDraft {
  kind: Calibration['kind'];
  /** Four places, of which a length uses the first two. */
  marks: readonly [Place, Place, Place, Place];
  lengthMm: string;
  widthMm: string;
  heightMm: string;
}

/** Marks begin where they can be seen, not where they belong. */
export function firstCalibration({ width, height }: { width: number; height: number }): CalibrationDraft {
  const at = (across: number, down: number): Place => ({
    x: Math.round(across * width),
    y: Math.round(down * height),
  });
  return {
    kind: 'length',
    marks: [at(0.2, 0.2), at(0.8, 0.2), at(0.8, 0.8), at(0.2, 0.8)],
    lengthMm: '',
    widthMm: '',
    heightMm: '',
  };
}

const aboveZero = (text: string): number | null => {
  const value = typedNumber(text);
  return value !== null && value > 0 ? value : null;
};

/** @returns null while a length is missing or not above zero */
export function readCalibration({ kind, marks, ...typed }: CalibrationDraft): Calibration | null {
  if (kind === 'length') {
    const lengthMm = aboveZero(typed.lengthMm);
    return lengthMm === null ? null : { kind, marks: [marks[0], marks[1]], lengthMm };
  }
  const [widthMm, heightMm] = [aboveZero(typed.widthMm), aboveZero(typed.heightMm)];
  return widthMm === null || heightMm === null ? null : { kind, marks, widthMm, heightMm };
}
