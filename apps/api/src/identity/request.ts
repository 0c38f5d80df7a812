import type { IncomingMessage } from 'node:http';
import { parse, serialize } from 'cookie';
import type { NextFunction, Request, RequestHandler, Response } from 'express';
import { describe, statusOf } from '../common/errors.js';
import type { Problem } from '../common/errors.js';
import type { Settings } from '../settings.js';
import type { Actor } from './access.js';
import type { IdentityService, SignedIn } from './identity.service.js';

const COOKIE = 'tallywing_session';

declare module 'express-serve-static-core' {
  interface Request {
    signedIn?: SignedIn | null;
    reference?: string;
  }
}

/** What resolvers see of a request. */
export interface RequestContext {
  readonly actor: Actor | null;
  readonly signedIn: SignedIn | null;
  readonly request: Request;
  readonly response: Response;
}

export function contextOf({ req, res }: { req: Request; res: Response }): RequestContext {
  return { actor: req.signedIn?.actor ?? null, signedIn: req.signedIn ?? null, request: req, response: res };
}

/** Who holds the session that the cookie of a request names; null for no cookie or no session. */
export async function whoIs(identity: IdentityService, request: IncomingMessage): Promise<SignedIn | null> {
  const token = parse(request.headers.cookie ?? '')[COOKIE];
  return token === undefined || token === '' ? null : await identity.resume(token);
}

/** Reads the session cookie, once per request. */
export function readSession(identity: IdentityService): RequestHandler {
  return (request: Request, _response: Response, next: NextFunction) => {
    whoIs(identity, request).then(
      (signedIn) => {
        request.signedIn = signedIn;
        next();
      },
      (error: unknown) => {
        next(error);
      },
    );
  };
}

export function setSessionCookie(context: RequestContext, token: string): void {
  context.response.append('set-cookie', serialize(COOKIE, token, cookieOptions(context)));
}

export function clearSessionCookie(context: RequestContext): void {
  context.response.append('set-cookie', serialize(COOKIE, '', { ...cookieOptions(context), maxAge: 0 }));
}

function cookieOptions(context: RequestContext) {
  return {
    httpOnly: true,
    sameSite: 'strict' as const,
    path: '/',
    secure: context.request.secure,
    maxAge: 7 * 24 * 3600,
  };
}

/**
 * A command must come from a page of ours: browsers say where a request comes from, and a foreign page is refused. Callers
 * that are not browsers send no origin and cannot be tricked into carrying somebody's cookie.
 */
export function refuseForeignOrigins(settings: Settings): RequestHandler {
  return (request, response, next) => {
    const safe = request.method === 'GET' || request.method === 'HEAD' || request.method === 'OPTIONS';
    if (safe || !isForeign(request, settings)) next();
    else answerProblem(response, { code: 'FORBIDDEN', action: `request from ${request.headers.origin}` });
  };
}

/** Whether a browser says that the request comes from a page that is not ours. */
export function isForeign({ headers }: IncomingMessage, settings: Settings): boolean {
  const { origin, host } = headers;
  return origin !== undefined && !settings.origins.includes(origin) && hostOf(origin) !== host;
}

function hostOf(origin: string): string | null {
  try {
    return new URL(origin).host;
  } catch {
    return null;
  }
}

/** The form of an error on plain routes and before GraphQL begins: the same as in a GraphQL answer. */
export function answerProblem(response: Response, problem: Problem): void {
  if (problem.code === 'TOO_MANY') response.setHeader('retry-after', problem.retryAfterSeconds);
  response.locals['problem'] = problem.code;
  response.status(statusOf(problem)).json({ errors: [describe(problem)] });
}
