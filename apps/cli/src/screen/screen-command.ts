import { readColumns, type NumberTable } from '@archwright/interop';
import { readArguments, readOneFile, UsageError } from '../arguments.js';
import { readInput } from '../read-input.js';
import { AGREEMENT_METHODS } from './agreement-methods.js';
import { numberOptions, type MethodData, type ScreenMethod } from './method.js';
import { OUTLIER_METHODS } from './outlier-methods.js';
import { SERIES_METHODS } from './series-methods.js';

const METHODS: Readonly<Record<string, ScreenMethod>> = { ...OUTLIER_METHODS, ...SERIES_METHODS, ...AGREEMENT_METHODS };

const USAGE = `cli screen METHOD FILE [--column NAME]… [options] [--json]
FILE: CSV with a header line. Methods: ${Object.keys(METHODS).join(', ')}.
cli screen METHOD --help explains a method, its options and the keys of its answer.`;

function help(name: string, { does, columns, options, answers }: ScreenMethod): string {
  const column = {
    one: 'one column (the first, when none is named)',
    'one-or-two': 'x and y in the first two columns, or two named; a single column against its row',
    two: 'two columns (the first two, when none is named)',
    several: 'two columns or more (all, when none is named)',
    'values-and-groups': 'a column of values and one of groups (the first two, when none is named)',
  }[columns];
  const optionLines = options.map(
    ({ name: option, meaning, byDefault }) =>
      `  --${option}  ${meaning}${byDefault === undefined ? '' : `; ${String(byDefault)} when left out`}`,
  );
  return [
    `${name}: ${does}`,
    `Reads ${column}.`,
    ...optionLines,
    'Keys of the answer (--json):',
    ...Object.entries(answers).map(([key, meaning]) => `  ${key}  ${meaning}`),
    '',
  ].join('\n');
}

function columnNames(method: ScreenMethod, table: NumberTable, named: readonly string[]): readonly string[] {
  const [fewest, most] = {
    one: [1, 1],
    'one-or-two': [1, 2],
    two: [2, 2],
    several: [2, Infinity],
    'values-and-groups': [2, 2],
  }[method.columns] as [number, number];
  const names = named.length > 0 ? named : table.names.slice(0, most);
  if (names.length >= fewest && names.length <= most) return names;
  const wanted = fewest === most ? String(fewest) : `at least ${String(fewest)}`;
  throw new UsageError(
    `${String(names.length)} columns given, ${wanted} wanted. Columns of the file: ${table.names.join(', ')}.`,
    USAGE,
  );
}

function dataOf(
  method: ScreenMethod,
  table: NumberTable,
  names: readonly string[],
): Pick<MethodData, 'columns' | 'groups'> {
  if (method.columns !== 'values-and-groups') return { columns: names.map((name) => table.column(name)), groups: [] };
  const [values = '', groups = ''] = names;
  return { columns: [table.column(values)], groups: table.texts(groups) };
}

const lines = (answer: Readonly<Record<string, unknown>>): string =>
  Object.entries(answer)
    .map(([key, value]) => `${key}: ${typeof value === 'string' ? value : JSON.stringify(value)}`)
    .join('\n');

/** Runs one screening method on the columns of a file: file in, answer out. Nothing is kept. */
export async function screenCommand(args: readonly string[]): Promise<number> {
  const [name, ...others] = args;
  const method = name === undefined || !Object.hasOwn(METHODS, name) ? undefined : METHODS[name];
  if (name === '--help') {
    process.stdout.write(`Usage: ${USAGE}\n`);
    return 0;
  }
  if (name === undefined || method === undefined) {
    throw new UsageError(name === undefined ? 'Give a method and a file.' : `There is no method "${name}".`, USAGE);
  }
  const { values, positionals } = readArguments(others, USAGE, {
    ...Object.fromEntries(method.options.map((option) => [option.name, { type: 'string' as const }])),
    column: { type: 'string', multiple: true },
    json: { type: 'boolean' },
    help: { type: 'boolean' },
  });
  if (values.help === true) {
    process.stdout.write(help(name, method));
    return 0;
  }
  const file = readOneFile(positionals, USAGE);
  const table = readColumns(await readInput(file));
  const named = (values.column ?? []) as readonly string[];
  const answer = method.run({
    ...dataOf(method, table, columnNames(method, table, named)),
    ...numberOptions(method, values, USAGE),
  });
  process.stdout.write(values.json === true ? `${JSON.stringify(answer, null, 2)}\n` : `${lines(answer)}\n`);
  return 0;
}
