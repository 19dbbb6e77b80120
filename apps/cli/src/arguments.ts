import { parseArgs, type ParseArgsConfig } from 'node:util';
import { DomainError } from '@archwright/kernel';

/** The command line was not understood. */
export class UsageError extends DomainError {
  constructor(message: string, usage: string) {
    super('cli.usage', `${message}\nUsage: ${usage}`);
  }
}

/** @throws {UsageError} naming the option that is not known or lacks its value */
export function readArguments<const Options extends NonNullable<ParseArgsConfig['options']>>(
  args: readonly string[],
  usage: string,
  options: Options,
) {
  try {
    return parseArgs({ args: [...args], options, allowPositionals: true });
  } catch (error) {
    throw new UsageError(error instanceof Error ? error.message : String(error), usage);
  }
}
