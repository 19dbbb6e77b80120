import { readArguments, readChoice, readOneFile, UsageError } from '../arguments.js';
import { readInput } from '../read-input.js';
import { InstanceFileError } from './instance-lines.js';
import { FORMATS } from './read-instance.js';
import type { SearchLimit } from './run-search.js';
import { solutionReport, solutionWords } from './solution-report.js';
import { NotCountedError, solve } from './solve.js';

const DEFAULT_SECONDS = 10;
const MOST_SECONDS = 86_400;
/** A stated number, never that of the machine's cores: the same command finds the same everywhere. */
const DEFAULT_THREADS = 2;
const MOST_THREADS = 64;
const MOST_STREAMS = 1024;
const USAGE = `cli solve FILE [--format ${FORMATS.join('|')}] [--seconds S | --epochs E | --schedules N]
  [--seed N] [--streams N] [--threads N] [--json]
FILE: a job shop, a flexible job shop, a single-mode project, or one with longest waits, in the text under which such
instances are published.
--seconds: ${String(DEFAULT_SECONDS)} when left out. --epochs: so many stretches of search for each stream instead, the same on every
machine. --schedules: so many decoded plans in all, for projects without longest waits; proofs by branching are left out.
--streams: independent searches, as many as threads when left out; what they find depends on their number and the seed.
--threads: ${String(DEFAULT_THREADS)} when left out; they change nothing but the time it takes.`;

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

function countOption(name: string, text: string | undefined, least: number, most = 0xffff_ffff): number | null {
  const isCount = (value: number): boolean => Number.isInteger(value) && value >= least && value <= most;
  return numberOption(name, text, isCount, `a whole number from ${String(least)} to ${String(most)}`);
}

interface LimitTexts {
  readonly seconds?: string | undefined;
  readonly epochs?: string | undefined;
  readonly schedules?: string | undefined;
}

/** @throws {UsageError} when more than one limit is given */
function limitOf({ seconds, epochs, schedules }: LimitTexts): SearchLimit {
  if ([seconds, epochs, schedules].filter((text) => text !== undefined).length > 1)
    throw new UsageError('Give one of --seconds, --epochs and --schedules.', USAGE);
  if (schedules !== undefined) return { seconds: Infinity, epochs: Infinity };
  const count = countOption('epochs', epochs, 0);
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
    schedules: { type: 'string' },
    seed: { type: 'string' },
    streams: { type: 'string' },
    threads: { type: 'string' },
    json: { type: 'boolean' },
    help: { type: 'boolean' },
  });
  if (values.help === true) {
    process.stdout.write(`Usage: ${USAGE}\n`);
    return 0;
  }
  const file = readOneFile(positionals, USAGE);
  const threads = countOption('threads', values.threads, 1, MOST_THREADS) ?? DEFAULT_THREADS;
  const streams = countOption('streams', values.streams, 1, MOST_STREAMS) ?? threads;
  const options = {
    format: values.format === undefined ? null : readChoice('--format', values.format, FORMATS, USAGE),
    limit: limitOf(values),
    seed: countOption('seed', values.seed, 0) ?? 1,
    streams,
    threads: Math.min(threads, streams),
    // The first plan of a stream is there before any is searched.
    schedules: countOption('schedules', values.schedules, streams),
  };
  const text = new TextDecoder().decode(await readInput(file));
  try {
    const { format, answer, run } = await solve(text, options, (line) => process.stderr.write(`${line}\n`));
    const { seed } = options;
    const report = solutionReport(format, answer, run, { threads: options.threads, streams, seed });
    process.stdout.write(values.json === true ? `${JSON.stringify(report)}\n` : solutionWords(answer, run));
    return 0;
  } catch (error) {
    if (!(error instanceof InstanceFileError || error instanceof NotCountedError)) throw error;
    process.stderr.write(`${file}: ${error.message}\n`);
    return 2;
  }
}
