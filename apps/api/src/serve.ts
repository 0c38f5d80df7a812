import { AsyncResource } from 'node:async_hooks';
import { randomUUID } from 'node:crypto';
import { existsSync } from 'node:fs';
import { createServer } from 'node:net';
import { join, resolve } from 'node:path';
import { NestFactory } from '@nestjs/core';
import { GraphQLSchemaHost } from '@nestjs/graphql';
import type { NestExpressApplication } from '@nestjs/platform-express';
import compression from 'compression';
import express from 'express';
import type { ErrorRequestHandler, Request, RequestHandler, Response } from 'express';
import helmet from 'helmet';
import { AppModule } from './app.module.js';
import type { Foundation } from './app.module.js';
import { toProblem } from './common/errors.js';
import type { Problem } from './common/errors.js';
import { limits } from './common/limits.js';
import { notedForLog, withCorrelation } from './common/logging.js';
import type { AppLog } from './common/logging.js';
import type { Metrics } from './common/metrics.js';
import { limitRate, RateLimit } from './common/rate.js';
import { figuresForReaders } from './health/readers.js';
import { IdentityService } from './identity/identity.service.js';
import { answerProblem, isForeign, readSession, refuseForeignOrigins, whoIs } from './identity/request.js';
import { LiveService } from './live/live.service.js';
import { openSocket } from './live/live.socket.js';
import { repositoryRoot, SettingsError } from './settings.js';
import type { Settings } from './settings.js';

const webDirectory = resolve(repositoryRoot, 'apps/web/dist');
/** Paths that are never a page of the web application. Looks ahead only: a router passes over a match that takes the slash. */
const ownPaths = /^\/(graphql|health|metrics|imports|exports|documents|calendar)(?=\/|$)/;
/** Those whose requests are counted and whose answers go out packed: not what watches over the application itself. */
const countedPaths = /^\/(graphql|imports|exports|documents|calendar)(?=\/|$)/;

/** Builds the HTTP application; the caller listens and closes. */
export async function buildApplication(foundation: Foundation, settings: Settings): Promise<NestExpressApplication> {
  const application = await NestFactory.create<NestExpressApplication>(AppModule.on(foundation), {
    logger: foundation.log,
    bodyParser: false,
    abortOnError: false,
  });
  const identity = application.get(IdentityService);
  if (settings.trustProxy) application.set('trust proxy', 1);
  application.disable('x-powered-by');
  application.use(observe(foundation.log, foundation.metrics));
  application.use(securityHeaders());
  application.use(keepPrivate());
  application.use(refuseForeignOrigins(settings));
  application.use(express.json({ limit: limits.body }));
  application.use(ownPaths, readSession(identity));
  application.use(countedPaths, limitRate(new RateLimit(settings.requestsPerMinute)));
  application.use(countedPaths, compression());
  application.use('/metrics', figuresForReaders(settings.metricsToken));
  application.use(servePages());
  application.use(onError(foundation.log));
  await application.init();
  application.use(onError(foundation.log));
  openSocket({
    server: application.getHttpServer(),
    schema: application.get(GraphQLSchemaHost).schema,
    live: application.get(LiveService),
    log: foundation.log,
    isForeign: (request) => isForeign(request, settings),
    whoIs: (request) => whoIs(identity, request),
  });
  return application;
}

/** @throws SettingsError when somebody else has the port */
export async function refuseTakenPort(settings: Settings): Promise<void> {
  if (settings.port === 0) return;
  await new Promise<void>((done, fail) => {
    const probe = createServer();
    probe.once('error', (error: NodeJS.ErrnoException) => {
      const why =
        error.code === 'EADDRINUSE'
          ? `Port ${settings.port} on ${settings.host} is taken. Perhaps Tallywing already runs: open http://${settings.host}:${settings.port}. Otherwise choose another: PORT=${settings.port + 1} npm start`
          : `Cannot listen on ${settings.host}:${settings.port} (${error.code}). Choose another HOST or PORT.`;
      fail(new SettingsError(why));
    });
    probe.listen(settings.port, settings.host, () => {
      probe.close(() => {
        done();
      });
    });
  });
}

/** An id that somebody in front gave, if it is nothing but an id. */
const usableId = /^[A-Za-z0-9][A-Za-z0-9._-]{7,63}$/;

/** Gives each request an id, which its log lines and errors carry, and counts it. */
function observe(log: AppLog, metrics: Metrics): RequestHandler {
  return (request, response, next) => {
    const given = request.get('x-request-id') ?? '';
    const reference = usableId.test(given) ? given : randomUUID().slice(0, 13);
    request.reference = reference;
    const { path } = request; // Routers below shorten it.
    response.setHeader('x-request-id', reference);
    const began = process.hrtime.bigint();
    let noted: typeof notedForLog = () => ({});
    response.on('finish', () => {
      const seconds = Number(process.hrtime.bigint() - began) / 1e9;
      const route = ownPaths.exec(path)?.[1] ?? 'page';
      metrics.requests.observe({ method: request.method, route, status: response.statusCode }, seconds);
      const problem = response.locals['problem'] as string | undefined;
      if (problem !== undefined) metrics.problems.inc({ code: problem });
      if (route === 'page') return;
      const operation = (request.body as { operationName?: unknown } | undefined)?.operationName;
      log.request({
        id: reference,
        method: request.method,
        // What follows there is the secret that lets a calendar in.
        path: path.startsWith('/calendar/') ? '/calendar/...' : path,
        status: response.statusCode,
        ms: Math.round(seconds * 1000),
        ...(typeof operation === 'string' && /^\w{1,80}$/.test(operation) ? { operation } : {}),
        ...noted(),
        ...(request.signedIn
          ? { organisation: request.signedIn.actor.organisationId, member: request.signedIn.actor.memberId }
          : {}),
      });
    });
    withCorrelation(reference, () => {
      noted = AsyncResource.bind(notedForLog);
      next();
    });
  };
}

/** Answers are one person's: no browser or proxy keeps them, and a page of ours asks for no camera, microphone or place. */
function keepPrivate(): RequestHandler {
  return (request, response, next) => {
    response.setHeader('permissions-policy', 'camera=(), microphone=(), geolocation=(), payment=(), usb=()');
    if (ownPaths.test(request.path)) response.setHeader('cache-control', 'no-store');
    next();
  };
}

function securityHeaders(): RequestHandler {
  return helmet({
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        'default-src': ["'self'"],
        'script-src': ["'self'"],
        // Charts and overlays place themselves through the document's own interface, which needs no exception.
        'style-src': ["'self'"],
        'img-src': ["'self'", 'data:'],
        'connect-src': ["'self'"],
        'object-src': ["'none'"],
        'base-uri': ["'none'"],
        'form-action': ["'self'"],
        'frame-ancestors': ["'none'"],
      },
    },
    // Whoever ends TLS in front says how long it is to be insisted on.
    strictTransportSecurity: false,
    referrerPolicy: { policy: 'same-origin' },
  });
}

/** Files under assets/ carry their content hash in the name. */
const FOR_EVER = 'public, max-age=31536000, immutable';

function servePages(): RequestHandler {
  const files = express.static(webDirectory, {
    index: false,
    setHeaders: (response, path) => {
      response.setHeader('cache-control', path.includes('/assets/') ? FOR_EVER : 'no-cache');
      response.vary('Accept-Encoding');
    },
  });
  return (request, response, next) => {
    if (ownPaths.test(request.path) || (request.method !== 'GET' && request.method !== 'HEAD')) {
      next();
      return;
    }
    if (sendPacked(request, response)) return;
    files(request, response, () => {
      const page = join(webDirectory, 'index.html');
      const wantsPage = request.accepts(['html', 'json']) === 'html' && !/\.[a-z0-9]+$/i.test(request.path);
      if (!wantsPage) next();
      else if (existsSync(page)) response.setHeader('cache-control', 'no-cache').sendFile(page);
      else response.type('text').send('The pages are not built yet. Run: npm run build');
    });
  };
}

/** Scripts and styles that were packed when they were built, to whoever can unpack them. */
function sendPacked(request: Request, response: Response): boolean {
  const [, name = '', ending = ''] = /^\/assets\/([\w-][\w.-]*\.(js|css))$/.exec(request.path) ?? [];
  const file = join(webDirectory, 'assets', `${name}.gz`);
  if (name === '' || request.acceptsEncodings('gzip') === false || !existsSync(file)) return false;
  response.vary('Accept-Encoding');
  response.setHeader('cache-control', FOR_EVER);
  response.setHeader('content-encoding', 'gzip');
  // The type is that of what is in it.
  response.type(ending).sendFile(file, { cacheControl: false });
  return true;
}

function onError(log: AppLog): ErrorRequestHandler {
  return (error: unknown, request, response, next) => {
    if (response.headersSent) {
      next(error);
      return;
    }
    answerProblem(response, readingProblem(error) ?? toProblem(error, request.reference ?? 'none', log));
  };
}

/** What the body reader has to complain about is the caller's to mend. */
function readingProblem(error: unknown): Problem | null {
  const type = (error as { type?: unknown } | null)?.type;
  if (type === 'entity.too.large') return { code: 'TOO_LARGE', limit: limits.body };
  if (
    typeof type === 'string' &&
    (type.startsWith('entity.') ||
      type.startsWith('encoding.') ||
      type.startsWith('charset.') ||
      type.startsWith('request.'))
  ) {
    return {
      code: 'BAD_INPUT',
      field: 'body',
      reason: 'The request body is not valid JSON.',
      wayOut: 'Send JSON in UTF-8.',
    };
  }
  return null;
}
