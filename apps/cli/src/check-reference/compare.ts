export interface Difference {
  /** Where in the expected answer, such as `ci95.icc11[0]`. */
  readonly at: string;
  readonly expected: unknown;
  readonly got: unknown;
  /** Absolute, for numbers. */
  readonly difference: number | null;
}

const isClose = (expected: number, got: number, tolerance: number): boolean =>
  Math.abs(got - expected) <= tolerance * Math.max(1, Math.abs(expected)) + Number.EPSILON;

/**
 * Where an answer differs from the expected one. Entries that the expected answer does not name are not looked at.
 *
 * @param tolerance relative or absolute, whichever is larger
 * @param exceptions other tolerances for entries by name
 */
export function differences(
  expected: unknown,
  got: unknown,
  tolerance: number,
  exceptions: Readonly<Record<string, number>> = {},
  at = '',
): Difference[] {
  if (typeof expected === 'number' && typeof got === 'number') {
    return isClose(expected, got, tolerance) ? [] : [{ at, expected, got, difference: Math.abs(got - expected) }];
  }
  if (Array.isArray(expected)) {
    if (!Array.isArray(got) || got.length !== expected.length) return [{ at, expected, got, difference: null }];
    return expected.flatMap((entry: unknown, index) =>
      differences(entry, got[index], tolerance, exceptions, `${at}[${String(index)}]`),
    );
  }
  if (expected !== null && typeof expected === 'object') {
    if (got === null || typeof got !== 'object') return [{ at, expected, got, difference: null }];
    return Object.entries(expected).flatMap(([key, entry]) =>
      differences(
        entry,
        (got as Readonly<Record<string, unknown>>)[key],
        exceptions[key] ?? tolerance,
        exceptions,
        at === '' ? key : `${at}.${key}`,
      ),
    );
  }
  return Object.is(expected, got) ? [] : [{ at, expected, got, difference: null }];
}
