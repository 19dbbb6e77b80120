import { UsageError } from '../arguments.js';

/** A number given on the command line for a method, and what it means. */
export interface MethodOption {
  readonly name: string;
  readonly meaning: string;
  /** Taken when it is left out; where it is missing too, the method finds its own or does without. */
  readonly byDefault?: number;
}

/** Columns that a method reads; `one-or-two` are y alone, or x and y. */
export type ColumnKind = 'one' | 'one-or-two' | 'two' | 'several' | 'values-and-groups';

/** One screening method as the command offers it. */
export interface ScreenMethod {
  readonly does: string;
  readonly columns: ColumnKind;
  readonly options: readonly MethodOption[];
  /** Keys of the JSON answer and their meaning. */
  readonly answers: Readonly<Record<string, string>>;
  readonly run: (data: MethodData) => Readonly<Record<string, unknown>>;
}

export interface MethodData {
  readonly columns: readonly (readonly number[])[];
  /** Of `values-and-groups`: the group of each row. */
  readonly groups: readonly string[];
  /** Of an option with a default. */
  option(name: string): number;
  /** Null when it was not given and has no default. */
  optional(name: string): number | null;
}

export const first = ({ columns }: MethodData): readonly number[] => columns[0] ?? [];
export const second = ({ columns }: MethodData): readonly number[] => columns[1] ?? [];
/** Rows of the file count from 1 below the header. */
export const rowsOf = (positions: readonly number[]): number[] => positions.map((position) => position + 1);

/** Turns columns into rows. */
export const asRows = ({ columns }: MethodData): number[][] =>
  first({ columns } as MethodData).map((_, at) => columns.map((column) => column[at] ?? Number.NaN));

/**
 * Options as numbers.
 *
 * @throws {UsageError} for a text that is no number
 */
export function numberOptions(
  method: ScreenMethod,
  given: Readonly<Record<string, string | boolean | string[] | undefined>>,
  usage: string,
): Pick<MethodData, 'option' | 'optional'> {
  const values = new Map<string, number>();
  for (const { name } of method.options) {
    const text = given[name];
    if (text === undefined) continue;
    const value = Number(text);
    if (typeof text !== 'string' || text.trim() === '' || !Number.isFinite(value)) {
      throw new UsageError(`--${name} "${String(text)}" is no number.`, usage);
    }
    values.set(name, value);
  }
  const optional = (name: string) =>
    values.get(name) ?? method.options.find((option) => option.name === name)?.byDefault ?? null;
  return {
    optional,
    option(name) {
      const value = optional(name);
      if (value !== null) return value;
      throw new Error(`--${name} has no default: ask for it as one that may be missing.`);
    },
  };
}
