import { STATUS_CODES } from 'node:http';

/** Codes whose ending does not tell their status. */
const BY_CODE: Readonly<Record<string, number>> = {
  'platform.cursor-invalid': 400,
  'platform.request-invalid': 400,
  'platform.idempotency-key-missing': 400,
  'platform.idempotency-key-reused': 422,
  'platform.idempotency-key-conflict': 409,
  'platform.precondition-missing': 428,
  'platform.precondition-failed': 412,
  'jobs.threads-busy': 503,
  'jobs.thread-crashed': 503,
  'jobs.threads-closed': 503,
  'jobs.task-too-long': 503,
};

/** Endings that a lib may use for its own codes, `lib.reason`. */
const BY_ENDING: readonly (readonly [ending: string, status: number])[] = [
  ['not-found', 404],
  ['conflict', 409],
  ['forbidden', 403],
  ['signed-out', 401],
  ['too-many', 429],
  ['unavailable', 503],
];

/** HTTP status of an error code: named, by ending, else 422 (the request was understood but can't be done). */
export function statusOf(code: string): number {
  const named = BY_CODE[code];
  if (named !== undefined) return named;
  const reason = code.slice(code.indexOf('.') + 1);
  const found = BY_ENDING.find(([ending]) => reason === ending || reason.endsWith(`-${ending}`));
  return found?.[1] ?? 422;
}

/** The status in words (RFC 9110, section 15). */
export function titleOf(status: number): string {
  return STATUS_CODES[status] ?? 'Error';
}
