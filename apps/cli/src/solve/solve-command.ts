import { readArguments, readChoice, readOneFile, UsageError } from '../arguments.js';
import { readInput } from '../read-input.js';
import { InstanceFileError } from './instance-lines.js';
import { FORMATS, openInstance } from './open-instance.js';
import { runSearch, type SearchLimit } from './run-search.js';
import { solutionReport, solutionWords } from './solution-report.js';

const DEFAULT_SECONDS = 10;
const MOST_SECONDS = 86_400;
const USAGE = `cli solve FILE [--format ${FORMATS.join('|')}] [--seconds S | --epochs E] [--seed N] [--json]
FILE: a job shop, a flexible job shop, a single-mode project, or one with longest waits, in the text under which such
instances are published.
--seconds: ${String(DEFAULT_SECONDS)} when left out. --epochs: so many stretches of search instead, the same on every machine.`;

function numberOption(
  name: string,
  text: string | undefined,
  isAccepted: (value: number) => boolean,
  accepted: string,
): number | null {
  if (text === undefined) return null;
  const value = Number(text);
  if (text.trim() !== '' && isAccepted(value)) return value;
  throw new UsageError(`--${name} "${text}" is not accepted. Accepted: ${accepted}.`, USAGE);
}

const isCount = (value: number): boolean => Number.isInteger(value) && value >= 0 && value <= 0xffff_ffff;

function limitOf(seconds: string | undefined, epochs: string | undefined): SearchLimit {
  if (seconds !== undefined && epochs !== undefined) throw new UsageError('Give --seconds or --epochs.', USAGE);
  const count = numberOption('epochs', epochs, isCount, 'a whole number, 0 or more');
  if (count !== null) return { seconds: Infinity, epochs: count };
  const isTime = (value: number): boolean => value >= 0 && value <= MOST_SECONDS;
  const time = numberOption('seconds', seconds, isTime, `a number from 0 to ${String(MOST_SECONDS)}`);
  return { seconds: time ?? DEFAULT_SECONDS, epochs: Infinity };
}

/** Solves one published instance: file in, plan and what is known of it out. Nothing is kept. */
export async function solveCommand(args: readonly string[]): Promise<number> {
  const { values, positionals } = readArguments(args, USAGE, {
    format: { type: 'string' },
    seconds: { type: 'string' },
    epochs: { type: 'string' },
    seed: { type: 'string' },
    json: { type: 'boolean' },
    help: { type: 'boolean' },
  });
  if (values.help === true) {
    process.stdout.write(`Usage: ${USAGE}\n`);
    return 0;
  }
  const file = readOneFile(positionals, USAGE);
  const format = values.format === undefined ? null : readChoice('--format', values.format, FORMATS, USAGE);
  const limit = limitOf(values.seconds, values.epochs);
  const seed = numberOption('seed', values.seed, isCount, 'a whole number from 0 to 4294967295') ?? 1;
  const text = new TextDecoder().decode(await readInput(file));
  try {
    const instance = openInstance(text, format, seed);
    const seconds = runSearch(instance.search, limit, (line) => process.stderr.write(`${line}\n`));
    process.stdout.write(
      values.json === true ? `${JSON.stringify(solutionReport(instance, seconds, seed))}\n` : solutionWords(instance),
    );
    return 0;
  } catch (error) {
    if (!(error instanceof InstanceFileError)) throw error;
    process.stderr.write(`${file}: ${error.message}\n`);
    return 2;
  }
}
