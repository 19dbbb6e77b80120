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
    timestamp: pino.stdTimeFunctions.isoTime,
  };
  return destination ? pino(options, destination) : pino(options);
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
