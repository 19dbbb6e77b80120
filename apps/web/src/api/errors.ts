import type { Problem } from '@archwright/contracts';

/** The server refused, and said why (RFC 9457). */
export class ProblemError extends Error {
  override readonly name = 'ProblemError';
  constructor(readonly problem: Problem) {
    super(problem.detail);
  }
  get status(): number {
    return this.problem.status;
  }
}

/** A field refused before it is sent, said as the service would say it. */
export const refusedHere = (path: string, sentence: string): ProblemError =>
  new ProblemError({
    type: 'about:blank',
    title: sentence,
    status: 400,
    detail: sentence,
    code: 'web.refused-here',
    errors: [{ path, problem: sentence }],
  });

/** The server could not be reached at all. */
export class OfflineError extends Error {
  override readonly name = 'OfflineError';
}

/** The server answered something that is not in the contract: our bug, not the person's. */
export class AnswerError extends Error {
  override readonly name = 'AnswerError';
}

export const hasStatus = (error: unknown, status: number): error is ProblemError =>
  error instanceof ProblemError && error.status === status;

/**
 * Refused fields by path, each with what would be accepted, ready to stand beside its input.
 * Array positions are kept (`arches.0.pathVersionId`).
 */
export function fieldErrors(error: unknown): Record<string, string> {
  if (!(error instanceof ProblemError)) return {};
  const found: Record<string, string> = {};
  for (const { path, problem, accepted } of error.problem.errors ?? []) {
    found[normalPath(path)] ??= accepted ? `${problem}. Accepted: ${accepted}.` : problem;
  }
  return found;
}

/** JSON pointers, brackets and dots are written one way: `a.0.b`. */
function normalPath(path: string): string {
  return path
    .replace(/^(#?\/|\$\.?|body\.)/, '')
    .replaceAll('/', '.')
    .replace(/\[(\d+)\]/g, '.$1')
    .replace(/^\./, '');
}
