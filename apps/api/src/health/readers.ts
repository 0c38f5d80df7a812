import { createHash, timingSafeEqual } from 'node:crypto';
import type { Request, RequestHandler } from 'express';

/** A proxy on this computer speaks for somebody elsewhere, and says so in these. */
const forwarded = ['x-forwarded-for', 'x-real-ip', 'forwarded'];

/** Stands before /metrics: figures are for this computer alone, or for whoever has the token. */
export function figuresForReaders(token: string): RequestHandler {
  return (request, response, next) => {
    if (mayReadFigures(request, token)) {
      next();
      return;
    }
    const wayOut = 'Set METRICS_TOKEN for the application and send it: Authorization: Bearer ...';
    const message = 'Figures are given to this computer alone.';
    response.status(403).json({ errors: [{ message, extensions: { code: 'FORBIDDEN', wayOut } }] });
  };
}

/** Whether a request comes from this computer itself, or brings the token; without a token set, none is right. */
export function mayReadFigures(request: Pick<Request, 'headers' | 'socket'>, token: string): boolean {
  const { headers, socket } = request;
  const given = /^Bearer (.+)$/.exec(headers.authorization ?? '')?.[1];
  if (given !== undefined) return token !== '' && timingSafeEqual(digest(given), digest(token));
  const near = /^(::1|(::ffff:)?127\.\d+\.\d+\.\d+)$/.test(socket.remoteAddress ?? '');
  return near && !forwarded.some((name) => headers[name] !== undefined);
}

const digest = (text: string): Buffer => createHash('sha256').update(text).digest();
