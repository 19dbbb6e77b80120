import type { FastifyReply, FastifyRequest } from 'fastify';

/** The `__Host-` prefix binds the cookie to this very host; browsers accept it over TLS only. */
const SECURE_NAME = '__Host-archwright';
const PLAIN_NAME = 'archwright';

export function readSessionCookie(request: FastifyRequest): string | null {
  return request.cookies[SECURE_NAME] ?? request.cookies[PLAIN_NAME] ?? null;
}

export function setSessionCookie(reply: FastifyReply, token: string, isSecure: boolean): void {
  void reply.setCookie(isSecure ? SECURE_NAME : PLAIN_NAME, token, cookieOptions(isSecure));
}

export function clearSessionCookie(reply: FastifyReply, isSecure: boolean): void {
  void reply.clearCookie(isSecure ? SECURE_NAME : PLAIN_NAME, cookieOptions(isSecure));
}

const cookieOptions = (secure: boolean) => ({ path: '/', httpOnly: true, sameSite: 'strict' as const, secure });
