import { NotANumberError, OptionError, TooFewValuesError, TooManyValuesError, UnequalLengthsError } from '../errors.js';

/** Sums of squares of many values up to this are still numbers. */
const LARGEST = 1e100;

/**
 * Refuses what no method can use: too few values, or one that is no number to reckon with.
 *
 * @throws {TooFewValuesError}
 * @throws {NotANumberError}
 */
export function requireSample(method: string, values: readonly number[], atLeast: number): void {
  const bad = values.findIndex((value) => !(Math.abs(value) <= LARGEST));
  if (bad >= 0) throw new NotANumberError(method, bad + 1, values[bad]!, LARGEST);
  if (values.length < atLeast) throw new TooFewValuesError(method, values.length, atLeast);
}

/** @throws {UnequalLengthsError} and what {@link requireSample} throws, for either column */
export function requirePairs(
  method: string,
  first: readonly number[],
  second: readonly number[],
  atLeast: number,
): void {
  if (first.length !== second.length) throw new UnequalLengthsError(method, first.length, second.length);
  requireSample(method, first, atLeast);
  requireSample(method, second, atLeast);
}

/**
 * Refuses rows of unequal width and values that are no numbers.
 *
 * @returns the width of the rows
 */
export function requireRows(method: string, rows: readonly (readonly number[])[], atLeast: number): number {
  if (rows.length < atLeast) throw new TooFewValuesError(method, rows.length, atLeast, 'rows');
  const width = rows[0]?.length ?? 0;
  for (const row of rows) {
    if (row.length !== width) throw new UnequalLengthsError(method, width, row.length);
    requireSample(method, row, 1);
  }
  return width;
}

/** @throws {OptionError} when the option does not lie strictly between the bounds */
export function requireBetween(method: string, option: string, given: number, low: number, high: number): void {
  if (given > low && given < high) return;
  throw new OptionError(method, option, given, `a number above ${String(low)} and below ${String(high)}`);
}

/** @throws {OptionError} when the option is no whole number in [low, high] */
export function requireWhole(method: string, option: string, given: number, low: number, high: number): void {
  if (Number.isInteger(given) && given >= low && given <= high) return;
  throw new OptionError(method, option, given, `a whole number from ${String(low)} to ${String(high)}`);
}

/** @throws {OptionError} when the option is not above 0 */
export function requirePositive(method: string, option: string, given: number): void {
  if (given > 0 && Number.isFinite(given)) return;
  throw new OptionError(method, option, given, 'a number above 0');
}

/** Whether any value differs from the first: a computed spread of equal values need not be exactly zero. */
export const varies = (values: readonly number[]): boolean => values.some((value) => value !== values[0]);

/** What a difference of two numbers of that size loses, and more. */
const ROUNDING = 1e-12;

/** Second taken from first, row by row; differences that are equal but for the rounding come out equal. */
export function differencesOf(first: readonly number[], second: readonly number[]): number[] {
  const size = first.reduce((most, value, at) => Math.max(most, Math.abs(value), Math.abs(second[at]!)), 0);
  const differences = first.map((value, at) => value - second[at]!);
  const isSame = differences.every((difference) => Math.abs(difference - differences[0]!) <= ROUNDING * size);
  return isSame ? differences.map(() => differences[0]!) : differences;
}

/** @throws {TooManyValuesError} */
export function requireAtMost(method: string, given: number, most: number, what?: string): void {
  if (given > most) throw new TooManyValuesError(method, given, most, what);
}
