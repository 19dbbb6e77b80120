import { randomUUID } from 'node:crypto';
import cookie from '@fastify/cookie';
import helmet from '@fastify/helmet';
import { RequestMethod } from '@nestjs/common';
import { NestFactory } from '@nestjs/core';
import { FastifyAdapter, type NestFastifyApplication } from '@nestjs/platform-fastify';
import { resumeSession } from '@archwright/casework';
import {
  Clock,
  FrameworkLogger,
  ProblemFilter,
  StorableTextPipe,
  validationPipe,
  withinRequest,
  type Configuration,
} from '@archwright/platform';
import type { FastifyInstance } from 'fastify';
import type { Logger } from 'pino';
import { DataSource } from 'typeorm';
import { AppModule } from './app.module.js';
import { openapiDocument } from './openapi/openapi-document.js';
import { servePages } from './pages.js';

const BODY_LIMIT_BYTES = 1024 * 1024;

/** The whole HTTP service, ready to listen; tests start the same one. */
export async function createApi(configuration: Configuration, logger: Logger): Promise<NestFastifyApplication> {
  const adapter = new FastifyAdapter({
    genReqId: () => randomUUID(),
    bodyLimit: BODY_LIMIT_BYTES,
    forceCloseConnections: 'idle',
  });
  const app = await NestFactory.create<NestFastifyApplication>(AppModule.forRoot(configuration, logger), adapter, {
    logger: new FrameworkLogger(logger),
    abortOnError: false,
  });
  const server = adapter.getInstance<FastifyInstance>();
  await server.register(cookie);
  await server.register(helmet, securityHeaders(configuration));
  logRequests(server, logger);
  letRoutesSetTheirLimit(server);
  nameRequests(server);
  tellTime(server, app.get(Clock));
  app.setGlobalPrefix('api/v1', { exclude: [{ path: 'health/*path', method: RequestMethod.GET }] });
  app.useGlobalPipes(new StorableTextPipe(), validationPipe());
  app.useGlobalFilters(new ProblemFilter(logger));
  serveDescription(server, app);
  const isLive = (token: string): Promise<boolean> =>
    resumeSession(app.get(DataSource), token, app.get(Clock).now()).then(
      () => true,
      () => false,
    );
  if (!(await servePages(server, configuration.webRoot, isLive)))
    logger.warn({ webRoot: configuration.webRoot }, 'no built web application');
  await app.init();
  return app;
}

/** Styles may stand in attributes, as the component library writes them; scripts may come from this service only. */
function securityHeaders({ publicUrl }: Configuration) {
  const isSecure = publicUrl.startsWith('https:');
  return {
    hsts: isSecure,
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'self'"],
        styleSrc: ["'self'", "'unsafe-inline'"],
        imgSrc: ["'self'", 'data:', 'blob:'],
        objectSrc: ["'none'"],
        baseUri: ["'none'"],
        formAction: ["'self'"],
        frameAncestors: ["'none'"],
        ...(isSecure ? { upgradeInsecureRequests: [] } : {}),
      },
    },
  };
}

/** `@RouteConfig({ bodyLimit })` on a handler: Nest passes on a route's configuration, but not its limit. */
function letRoutesSetTheirLimit(server: FastifyInstance): void {
  server.addHook('onRoute', (route) => {
    const config: { bodyLimit?: number } | undefined = route.config;
    if (config?.bodyLimit !== undefined) route.bodyLimit = config.bodyLimit;
  });
}

/** One line per request: the route's template, never the address, which may hold what a person typed. */
function logRequests(server: FastifyInstance, logger: Logger): void {
  server.addHook('onSend', async (request, reply) => {
    reply.header('x-request-id', request.id);
  });
  server.addHook('onResponse', async (request, reply) => {
    const { method, id, routeOptions } = request;
    const tookMs = Math.round(reply.elapsedTime);
    logger.info(
      { requestId: id, method, route: routeOptions.url ?? null, status: reply.statusCode, tookMs },
      'request',
    );
  });
}

/** In the last hook before the work: reading a body loses what an earlier one set for the call. */
function nameRequests(server: FastifyInstance): void {
  server.addHook('preHandler', (request, _reply, done) => {
    withinRequest(request.id, done);
  });
}

/** Answers say what time it is here: browsers count a hold down by it, whatever their own clock shows. */
function tellTime(server: FastifyInstance, clock: Clock): void {
  server.addHook('onSend', async ({ url }, reply) => {
    // Files keep the machine's time, by which caches reckon their age.
    if (url.startsWith('/api/')) reply.header('date', clock.now().toUTCString());
  });
}

/** Made at the first request for it: it takes a while, and most processes are never asked. */
function serveDescription(server: FastifyInstance, app: NestFastifyApplication): void {
  let text: string | undefined;
  server.get('/api/openapi.json', async (_request, reply) => {
    text ??= JSON.stringify(openapiDocument(app));
    return reply.type('application/json; charset=utf-8').send(text);
  });
}
