import { existsSync, readdirSync } from 'node:fs';
import { join, relative, resolve, sep } from 'node:path';
import fastifyStatic from '@fastify/static';
import type { FastifyInstance } from 'fastify';
import { readSessionCookie } from './security/session-cookie.js';

const DAY_MS = 24 * 3_600_000;
const SERVICE_PATHS = /^\/(api|health)(\/|$)/;
/** What every screen behind the sign-in asks first: the browser fetches it beside the application's code. */
const ASKED_FIRST = ['/api/v1/sessions/current', '/api/v1/practice']
  .map((path) => `<${path}>; rel=preload; as=fetch; crossorigin`)
  .join(', ');

/**
 * Serves the built web application; an address that is no file of it is one of its screens.
 *
 * @returns false when there is no built application at `webRoot`
 */
export async function servePages(server: FastifyInstance, webRoot: string): Promise<boolean> {
  const root = resolve(webRoot);
  if (!existsSync(join(root, 'index.html'))) return false;
  const files = new Set(
    readdirSync(root, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => `/${relative(root, join(entry.parentPath, entry.name)).split(sep).join('/')}`),
  );
  await server.register(fastifyStatic, { root, serve: false, preCompressed: true });
  server.get('/*', (request, reply) => {
    const [path = '/'] = request.url.split('?');
    if (SERVICE_PATHS.test(path)) {
      reply.callNotFound();
      return reply;
    }
    // The bundler puts a hash of the content into the names below `assets`, so they never change.
    if (path.startsWith('/assets/') && files.has(path))
      return reply.sendFile(path, { maxAge: 365 * DAY_MS, immutable: true });
    if (files.has(path)) return reply.sendFile(path, { maxAge: 0 });
    if (path.startsWith('/assets/')) {
      reply.callNotFound();
      return reply;
    }
    if (readSessionCookie(request) !== null) void reply.header('link', ASKED_FIRST);
    return reply.sendFile('index.html', { maxAge: 0 });
  });
  return true;
}
