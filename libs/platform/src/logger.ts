import type { LoggerService } from '@nestjs/common';
import { pino, type DestinationStream, type Logger } from 'pino';

/** Fields that never reach a log, at the top and one level down. People are named by id only. */
const SECRET = ['password', 'secret', 'token', 'cookie', 'authorization', 'sessionSecret', 'databaseUrl', 'smtpUrl'];
const PERSONAL = ['name', 'familyName', 'givenName', 'birthDate', 'bornOn', 'mail', 'email', 'phone', 'address'];

/** One line of JSON per event on standard output, or to `destination`. */
export function createLogger(service: string, level: string, destination?: DestinationStream): Logger {
  const hidden = [...SECRET, ...PERSONAL];
  const options = {
    level,
    base: { service },
    redact: { paths: [...hidden, ...hidden.map((field) => `*.${field}`), 'req.headers'], censor: '[hidden]' },
    serializers: { err: describeError },
    timestamp: pino.stdTimeFunctions.isoTime,
  };
  return destination ? pino(options, destination) : pino(options);
}

/** What a database says of an error beside its words, which may repeat what a row holds: names, not values. */
const NAMED: ReadonlySet<string> = new Set(['code', 'schema', 'table', 'column', 'constraint', 'routine']);

/** An error as it may stand in a log. Of one of a database only names and the place in the program: not the query's values. */
function describeError(error: unknown): object {
  if (!(error instanceof Error)) return { type: typeof error };
  const carried = new Map(Object.entries(error));
  const names = Object.fromEntries([...carried].filter(([name]) => NAMED.has(name)));
  const isOfDatabase = carried.has('query') || carried.has('severity');
  const { message, stack = '' } = error;
  // The first lines repeat the message.
  const places = stack
    .split('\n')
    .filter((line) => line.startsWith('    at '))
    .join('\n');
  const cause = error.cause === undefined ? {} : { cause: describeError(error.cause) };
  return { type: error.name, ...names, ...(isOfDatabase ? {} : { message }), stack: places, ...cause };
}

/** Lets the framework speak through our logger. */
export class FrameworkLogger implements LoggerService {
  constructor(private readonly logger: Logger) {}

  log(message: unknown, context?: unknown): void {
    this.logger.debug({ context }, String(message)); // the framework's "mapped route" lines are for developers
  }
  warn(message: unknown, context?: unknown): void {
    this.logger.warn({ context }, String(message));
  }
  error(message: unknown, stack?: unknown, context?: unknown): void {
    this.logger.error({ context, stack }, String(message));
  }
  fatal(message: unknown, context?: unknown): void {
    this.logger.fatal({ context }, String(message));
  }
  debug(message: unknown, context?: unknown): void {
    this.logger.debug({ context }, String(message));
  }
}
