/**
 * Turns a reference case's input into the product's call and its answer into the case's form.
 * Positions count from 1 in the cases and from 0 in the product.
 */
export interface Adapter {
  readonly run: (input: never) => unknown;
  /** Entries that need another tolerance than the case's: a simulation, or a rule of another implementation. */
  readonly tolerances?: Readonly<Record<string, number>>;
}

export const fromOne = (positions: readonly number[]): number[] => positions.map((position) => position + 1);
