import { QueryFailedError } from 'typeorm';

/** Whether the database refused with one of these SQLSTATEs, and if asked, by this constraint. */
export function isDatabaseError(error: unknown, states: readonly string[], constraint?: string): boolean {
  if (!(error instanceof QueryFailedError)) return false;
  const { code, constraint: violated } = error.driverError as { code?: string; constraint?: string };
  return code !== undefined && states.includes(code) && (constraint === undefined || constraint === violated);
}
