import { DomainError } from '@archwright/kernel';

/** A tracing, or a part of one, that cannot be evaluated; `code` is `tracing.` and the reason. */
export class TracingError extends DomainError {
  constructor(
    reason:
      | 'too-few-points'
      | 'too-many-points'
      | 'not-a-number'
      | 'collinear'
      | 'unit'
      | 'phase'
      | 'no-tracing'
      | 'picture-size'
      | 'scale'
      | 'marks',
    message: string,
    details: Readonly<Record<string, unknown>> = {},
  ) {
    super(`tracing.${reason}`, message, details);
  }
}

/** @throws {TracingError} `tracing.too-few-points`, or `tracing.not-a-number` with the position, from 1, of the first bad point */
export function requirePoints(what: string, points: readonly { x: number; y: number }[], atLeast: number): void {
  const bad = points.findIndex(({ x, y }) => !Number.isFinite(x) || !Number.isFinite(y));
  if (bad >= 0) {
    const message = `${what}: point ${String(bad + 1)} is no pair of finite numbers. Accepted: coordinates in mm.`;
    throw new TracingError('not-a-number', message, { what, position: bad + 1 });
  }
  if (points.length < atLeast) {
    throw new TracingError(
      'too-few-points',
      `${what}: ${String(points.length)} points given, at least ${String(atLeast)} are needed.`,
      { what, given: points.length, needed: atLeast },
    );
  }
}
