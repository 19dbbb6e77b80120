import { Catch, HttpException, type ArgumentsHost, type ExceptionFilter } from '@nestjs/common';
import { DomainError } from '@archwright/kernel';
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Logger } from 'pino';
import { isDatabaseAway } from './database-away.js';
import { RequestInvalidError } from './validation.js';
import { statusOf, titleOf } from './problem-status.js';

/** A commit that was under way may have gone through, so nothing can be promised of the change. */
const DATABASE_AWAY = {
  status: 503,
  code: 'platform.database-unavailable',
  detail:
    'The database can not be reached now, and whether the change was made is not known. Repeat the same call in a ' +
    'few seconds, under the same Idempotency-Key where it has one.',
  retryAfterSeconds: 2,
};

/** Answers every error as `application/problem+json` (RFC 9457); what we did not expect stays in the log. */
@Catch()
export class ProblemFilter implements ExceptionFilter {
  constructor(private readonly logger: Logger) {}

  catch(error: unknown, host: ArgumentsHost): void {
    const http = host.switchToHttp();
    const request = http.getRequest<FastifyRequest>();
    const { status, code, detail, ...more } = this.describe(error, request);
    const reply = http.getResponse<FastifyReply>();
    // RFC 9110, section 10.2.3: in whole seconds.
    if (typeof more.retryAfterSeconds === 'number') void reply.header('retry-after', String(more.retryAfterSeconds));
    void reply
      .status(status)
      .header('content-type', 'application/problem+json; charset=utf-8')
      .header('cache-control', 'no-store')
      .send({
        ...more,
        type: `urn:archwright:problem:${code}`,
        title: titleOf(status),
        status,
        detail,
        code,
        requestId: request.id,
      });
  }

  private describe(
    error: unknown,
    request: FastifyRequest,
  ): { status: number; code: string; detail: string } & Record<string, unknown> {
    if (error instanceof RequestInvalidError) {
      return { status: 400, code: error.code, detail: error.message, errors: error.errors };
    }
    if (error instanceof DomainError) {
      return { ...error.details, status: statusOf(error.code), code: error.code, detail: error.message };
    }
    const status = httpStatusIn(error);
    if (status === 413) {
      const limit = String(request.routeOptions.bodyLimit);
      return { status, code: 'http.413', detail: `The request is too large. Accepted: at most ${limit} bytes here.` };
    }
    if (status !== undefined && status < 500) {
      return {
        status,
        code: `http.${String(status)}`,
        detail: error instanceof Error ? error.message : titleOf(status),
      };
    }
    const about = { requestId: request.id, route: request.routeOptions.url };
    if (isDatabaseAway(error)) {
      this.logger.warn({ ...about, reason: error instanceof Error ? error.message : null }, 'the database is away');
      return DATABASE_AWAY;
    }
    this.logger.error({ ...about, err: error }, 'request failed');
    return {
      status: status ?? 500,
      code: 'platform.unexpected',
      detail: `Something went wrong on our side; nothing was changed. Quote ${request.id} when you report it.`,
    };
  }
}

/** Nest and Fastify carry the status in different places. */
function httpStatusIn(error: unknown): number | undefined {
  if (error instanceof HttpException) return error.getStatus();
  const carried = error instanceof Error && 'statusCode' in error ? error.statusCode : undefined;
  return typeof carried === 'number' && carried >= 400 && carried < 600 ? carried : undefined;
}
