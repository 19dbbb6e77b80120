import { createHash } from 'node:crypto';
import { createParamDecorator, type ExecutionContext } from '@nestjs/common';
import { DomainError } from '@archwright/kernel';
import type { FastifyRequest } from 'fastify';
import { wantsHeader } from './wanted-header.js';

/** Codes and statuses follow the draft "The Idempotency-Key HTTP Header Field" (draft-ietf-httpapi-idempotency-key-header-07). */
export class IdempotencyKeyMissingError extends DomainError {
  constructor() {
    super(
      'platform.idempotency-key-missing',
      'This call needs the header Idempotency-Key with 8 to 200 printable characters, new for each intent, such as a UUID.',
    );
  }
}

export class IdempotencyKeyReusedError extends DomainError {
  constructor() {
    super(
      'platform.idempotency-key-reused',
      'This Idempotency-Key was used for another request. Draw a new key for a new intent.',
    );
  }
}

export class IdempotentRequestRunningError extends DomainError {
  constructor() {
    super(
      'platform.idempotency-key-conflict',
      'The first request with this Idempotency-Key is still running. Wait for its answer, or repeat in a second.',
    );
  }
}

/** One intent of a client: repeats carry the same key and the same fingerprint. */
export interface IdempotentRequest {
  readonly key: string;
  /** Hash of method, path and body, without a password. */
  readonly fingerprint: string;
}

/** What the ledger knows of a key when its row is locked. */
export type LedgerEntry = { readonly fingerprint: string; readonly answer: unknown };

/**
 * Remembers answers by key. The row is written in the transaction of the effect, so that one can't exist without the
 * other; `Transaction` is the records' handle of it.
 */
export interface IdempotencyLedger<Transaction> {
  /**
   * Locks the key for this transaction.
   * @returns the kept answer, or null when this is the first request
   * @throws {IdempotentRequestRunningError} while another transaction holds the key
   */
  claim(transaction: Transaction, key: string): Promise<LedgerEntry | null>;
  keep(transaction: Transaction, request: IdempotentRequest, answer: unknown): Promise<void>;
}

/**
 * Does `work` once per key inside the caller's transaction; a repeat gets the first answer.
 *
 * @throws {IdempotencyKeyReusedError} when the key came with another request before
 */
export async function answerOnce<Transaction, Answer>(
  ledger: IdempotencyLedger<Transaction>,
  transaction: Transaction,
  request: IdempotentRequest,
  work: () => Promise<Answer>,
): Promise<Answer> {
  const kept = await ledger.claim(transaction, request.key);
  if (kept) {
    if (kept.fingerprint !== request.fingerprint) throw new IdempotencyKeyReusedError();
    return kept.answer as Answer; // kept under the same fingerprint, so it is an answer of the same call
  }
  const answer = await work();
  await ledger.keep(transaction, request, answer);
  return answer;
}

/**
 * Hash that tells two requests apart: method, path with query, and body. Passwords are left out: the hash is kept, and
 * where everything else of a request is known it would let anybody who reads it try out passwords by the million.
 */
export function fingerprintOf(method: string, path: string, body: unknown): string {
  const withoutPassword = (name: string, value: unknown): unknown => (name === 'password' ? undefined : value);
  return createHash('sha256')
    .update(JSON.stringify([method, path, body ?? null], withoutPassword))
    .digest('hex');
}

/** Controller parameter: key and fingerprint of a creating call. */
export const Idempotent = createParamDecorator(
  (_: unknown, context: ExecutionContext): IdempotentRequest => {
    const request = context.switchToHttp().getRequest<FastifyRequest>();
    const key = request.headers['idempotency-key'];
    if (typeof key !== 'string' || !/^[\x21-\x7e]{8,200}$/.test(key)) throw new IdempotencyKeyMissingError();
    return { key, fingerprint: fingerprintOf(request.method, request.url, request.body) };
  },
  [wantsHeader('Idempotency-Key')],
);
