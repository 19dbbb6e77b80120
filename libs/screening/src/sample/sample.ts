import { NotANumberError, OptionError, TooFewValuesError, UnequalLengthsError } from '../errors.js';

/**
 * Refuses what no method can use: too few values, or one that is no finite number.
 *
 * @throws {TooFewValuesError}
 * @throws {NotANumberError}
 */
export function requireSample(method: string, values: readonly number[], atLeast: number): void {
  const bad = values.findIndex((value) => !Number.isFinite(value));
  if (bad >= 0) throw new NotANumberError(method, bad + 1, values[bad]!);
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
