import { createParamDecorator, type ExecutionContext } from '@nestjs/common';
import type { FastifyReply } from 'fastify';

/** An `AbortSignal` that is given when the caller goes away before the answer is sent: nobody waits for the work then. */
export const WhenGone = createParamDecorator((_: unknown, context: ExecutionContext): AbortSignal => {
  const { raw } = context.switchToHttp().getResponse<FastifyReply>();
  const gone = new AbortController();
  raw.once('close', () => {
    if (!raw.writableFinished) gone.abort();
  });
  return gone.signal;
});
