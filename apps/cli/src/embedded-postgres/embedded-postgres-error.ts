import { DomainError } from '@archwright/kernel';

/** The embedded database could not be made, started or stopped. */
export class EmbeddedPostgresError extends DomainError {
  constructor(reason: string, message: string, details: Readonly<Record<string, unknown>> = {}) {
    super(`embedded-postgres.${reason}`, message, details);
  }
}
