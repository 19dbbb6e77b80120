import { MEASUREMENTS } from '@archwright/measures';
import { delivered } from '../words/delivered.js';
import { spelled } from '../words/plural.js';

const NAMES = new Map(MEASUREMENTS.map(({ code, name }) => [code, name]));

/** A measurement or finding by its name in the catalogue. */
export function captureName(code: string): string {
  const name = NAMES.get(code);
  return name === undefined ? spelled(code) : delivered(name);
}

/** Everything that a visit can capture. */
export const captureChoices = (): { value: string; label: string }[] =>
  [...NAMES.keys()].map((value) => ({ value, label: captureName(value) }));
