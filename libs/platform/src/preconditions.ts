import { createParamDecorator, type ExecutionContext } from '@nestjs/common';
import { DomainError } from '@archwright/kernel';
import type { FastifyRequest } from 'fastify';
import { wantsHeader } from './wanted-header.js';

/** A changing call came without `If-Match` (RFC 6585, section 3: 428). */
export class PreconditionMissingError extends DomainError {
  constructor() {
    super(
      'platform.precondition-missing',
      'This change needs the header If-Match with the ETag of the answer that it is based on, such as If-Match: "3".',
    );
  }
}

/** The change is based on an older version than the stored one (RFC 9110, section 13.1.1: 412). */
export class PreconditionFailedError extends DomainError {
  constructor(expected: number, current: number) {
    super(
      'platform.precondition-failed',
      `Somebody changed this meanwhile: your change is based on version ${String(expected)}, the current one is ${String(current)}. Read it again and repeat the change.`,
      { expected, current },
    );
  }
}

/** `ETag` of a version. */
export function etagOf(version: number): string {
  return `"${String(version)}"`;
}

/**
 * Version demanded by an `If-Match` header; one strong entity tag made by {@link etagOf}.
 *
 * @throws {PreconditionMissingError} when there is none or it is not one of ours
 */
export function versionOf(ifMatch: string | undefined): number {
  const digits = /^\s*"(\d{1,9})"\s*$/.exec(ifMatch ?? '')?.[1];
  if (digits === undefined) throw new PreconditionMissingError();
  return Number(digits);
}

/** @throws {PreconditionFailedError} when the stored version moved on */
export function requireVersion(expected: number, current: number): void {
  if (expected !== current) throw new PreconditionFailedError(expected, current);
}

/** Controller parameter: the version that `If-Match` demands. */
export const IfMatch = createParamDecorator(
  (_: unknown, context: ExecutionContext): number =>
    versionOf(context.switchToHttp().getRequest<FastifyRequest>().headers['if-match']),
  [wantsHeader('If-Match')],
);
