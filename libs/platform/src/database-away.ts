/** SQLSTATE classes and codes of a server that is going, gone or not yet there (PostgreSQL, appendix A). */
const AWAY_STATES = /^(08...|57P0[1-3]|53300)$/;
const AWAY_SOCKET = new Set(['ECONNREFUSED', 'ECONNRESET', 'EPIPE', 'ETIMEDOUT', 'ENOTFOUND', 'EAI_AGAIN']);
/** The driver's own errors carry no code, only words. */
const AWAY_WORDS =
  /connection terminated|connection error and is not queryable|timeout exceeded when trying to connect/i;

/** Whether the database did not refuse the work but could not be reached, or went away in the middle of it. */
export function isDatabaseAway(error: unknown): boolean {
  if (!(error instanceof Error)) return false;
  const { code, driverError, errors } = error as Error & { code?: unknown; driverError?: unknown; errors?: unknown };
  if (driverError instanceof Error) return isDatabaseAway(driverError);
  // One error per address that was tried.
  if (Array.isArray(errors) && errors.length > 0) return errors.every(isDatabaseAway);
  if (typeof code === 'string') return AWAY_STATES.test(code) || AWAY_SOCKET.has(code);
  return AWAY_WORDS.test(error.message);
}
