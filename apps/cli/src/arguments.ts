import { isAbsolute, resolve } from 'node:path';
import { parseArgs, type ParseArgsConfig } from 'node:util';
import { DomainError } from '@archwright/kernel';

/** The command line was not understood. */
export class UsageError extends DomainError {
  constructor(message: string, usage: string) {
    super('cli.usage', `${message}\nUsage: ${usage}`);
  }
}

/** Such as `-5` or `-.5e3`: a value, never the name of an option. */
const NEGATIVE_NUMBER = /^-(\d|[.,]\d)/;

/** @throws {UsageError} naming the option that is not known or lacks its value */
export function readArguments<const Options extends NonNullable<ParseArgsConfig['options']>>(
  args: readonly string[],
  usage: string,
  options: Options,
) {
  try {
    // A space before a negative number keeps it from being read as an option; whoever reads numbers trims.
    const values = args.map((arg) => (NEGATIVE_NUMBER.test(arg) ? ` ${arg}` : arg));
    return parseArgs({ args: values, options, allowPositionals: true });
  } catch (error) {
    throw new UsageError(error instanceof Error ? error.message : String(error), usage);
  }
}

/** @throws {UsageError} when the text is no port */
export function readPort(text: string | undefined, usage: string): number | undefined {
  if (text === undefined) return undefined;
  const port = Number(text);
  if (/^\d{1,5}$/.test(text) && port <= 65_535) return port;
  throw new UsageError(`--port "${text}" is no port; give a whole number from 0 to 65535, 0 for a free one.`, usage);
}

/** @throws {UsageError} naming what would be accepted */
export function readChoice<const Choice extends string>(
  option: string,
  text: string,
  choices: readonly Choice[],
  usage: string,
): Choice {
  const chosen = choices.find((choice) => choice === text);
  if (chosen !== undefined) return chosen;
  throw new UsageError(`${option} "${text}" is not known; give ${choices.join(' or ')}.`, usage);
}

/** @throws {UsageError} unless exactly one file is named */
export function readOneFile([file, ...rest]: readonly string[], usage: string): string {
  if (file === undefined || rest.length > 0) throw new UsageError('Give one file.', usage);
  return file;
}

/** A path as the caller meant it: against the folder in which the command was typed, not the one in which npm runs it. */
export function callersPath(path: string): string {
  return isAbsolute(path) ? path : resolve(process.env.INIT_CWD ?? process.cwd(), path);
}
