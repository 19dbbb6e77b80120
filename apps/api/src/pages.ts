import { existsSync, readdirSync } from 'node:fs';
import { join, relative, resolve, sep } from 'node:path';
import fastifyStatic from '@fastify/static';
import type { FastifyInstance } from 'fastify';
import { readSessionCookie } from './security/session-cookie.js';

const DAY_MS = 24 * 3_600_000;
const SERVICE_PATHS = /^\/(api|health)(\/|$)/;
/** What every screen behind the sign-in asks first: the browser fetches it beside the application's code. */
const ASKED_FIRST = ['/api/v1/sessions/current', '/api/v1/practice'];
/** What single screens ask first besides, by the id in their address. */
const ASKED_BY_SCREEN: readonly [screen: RegExp, address: string][] = [
  [/^\/chair\/stages\/([\da-f-]{36})$/, '/api/v1/stages/'],
  [/^\/desk\/cases\/([\da-f-]{36})$/, '/api/v1/cases/'],
];

/**
 * Serves the built web application; an address that is no file of it is one of its screens.
 *
 * @param isLive whether a token is that of a session: what a browser without one was told to fetch beforehand, it would keep,
 *   refusals, for whoever signs in afterwards
 * @returns false when there is no built application at `webRoot`
 */
export async function servePages(
  server: FastifyInstance,
  webRoot: string,
  isLive: (token: string) => Promise<boolean>,
): Promise<boolean> {
  const root = resolve(webRoot);
  if (!existsSync(join(root, 'index.html'))) return false;
  const files = new Set(
    readdirSync(root, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => `/${relative(root, join(entry.parentPath, entry.name)).split(sep).join('/')}`),
  );
  await server.register(fastifyStatic, { root, serve: false, preCompressed: true });
  server.get('/*', async (request, reply) => {
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
    const token = readSessionCookie(request);
    if (token !== null && (await isLive(token))) void reply.header('link', linksOf(path));
    return reply.sendFile('index.html', { maxAge: 0 });
  });
  return true;
}

/** What the page of a screen asks first, for the browser to fetch beside its code (RFC 8288; HTML, link type "preload"). */
function linksOf(path: string): string {
  const own = ASKED_BY_SCREEN.flatMap(([screen, address]) => {
    const id = screen.exec(path)?.[1];
    return id === undefined ? [] : [address + id];
  });
  return [...ASKED_FIRST, ...own].map((address) => `<${address}>; rel=preload; as=fetch; crossorigin`).join(', ');
}
