import type { TracingGiven } from '@archwright/contracts';
import { stageWords } from '../words/chair.js';
import { typedNumber } from './typed-number.js';

/** Ranges as in the contract: what the server accepts. */
export const TRACING_NUMBERS = {
  closureCount: { min: 1, max: 100 },
  closureRmsMm: { min: 0, max: 20 },
  closureMaxPairMm: { min: 0, max: 40 },
  roundingRadiusMm: { min: 0, max: 20 },
  armRmsMm: { min: 0, max: 20 },
  asymmetryDeg: { min: 0, max: 180 },
  dorsalExtensionMm: { min: -20, max: 20 },
  offsetMm: { min: 0, max: 20 },
} as const;

export type NumberName = keyof typeof TRACING_NUMBERS;

/** Closures are one finding: how many, their scatter, and the widest pair belong together. */
export const CLOSURE_NUMBERS = ['closureCount', 'closureRmsMm', 'closureMaxPairMm'] as const;
type ClosureName = (typeof CLOSURE_NUMBERS)[number];

/** Numbers that were typed; what is out of range is refused beside its box. */
export function readNumbers<Name extends NumberName>(
  draft: Readonly<Record<Name, string>>,
  names: readonly Name[],
  at: string,
  errors: Record<string, string>,
): Partial<Record<Name, number>> {
  const found: Partial<Record<Name, number>> = {};
  for (const name of names) {
    if (draft[name].trim() === '') continue;
    const { min, max } = TRACING_NUMBERS[name];
    const value = typedNumber(draft[name]);
    if (value === null || value < min || value > max || (name === 'closureCount' && !Number.isInteger(value))) {
      errors[`${at}|${name}`] = stageWords.tracingRange(min, max);
    } else found[name] = value;
  }
  return found;
}

/** All three or none: what is missing of them is refused beside its box. */
export function readClosures(
  numbers: Partial<Record<ClosureName, number>>,
  at: string,
  errors: Record<string, string>,
): TracingGiven['closures'] {
  const { closureCount: count, closureRmsMm: rmsMm, closureMaxPairMm: maxPairMm } = numbers;
  if (count !== undefined && rmsMm !== undefined && maxPairMm !== undefined) return { count, rmsMm, maxPairMm };
  for (const name of CLOSURE_NUMBERS) {
    const someTyped = count !== undefined || rmsMm !== undefined || maxPairMm !== undefined;
    if (someTyped && numbers[name] === undefined) errors[`${at}|${name}`] ??= stageWords.closuresTogether;
  }
  return undefined;
}
