import type { Request, RequestHandler } from 'express';
import { AppError } from './errors.js';

/** More callers at once than any house has; what is forgotten beyond it are those that waited longest. */
const MOST_CALLERS = 20_000;

/**
 * So many requests a minute for each signed-in browser, and for each address from which nobody is signed in. Unused ones are
 * saved up to a minute's worth. Kept in memory: each process counts for itself.
 */
export class RateLimit {
  private readonly buckets = new Map<string, { left: number; at: number }>();

  constructor(private readonly perMinute: number) {}

  /** @returns seconds to wait, 0 when this one may go on */
  take(caller: string, now: number): number {
    const known = this.buckets.get(caller) ?? { left: this.perMinute, at: now };
    const left = Math.min(this.perMinute, known.left + ((now - known.at) / 60_000) * this.perMinute);
    const allowed = left >= 1;
    this.buckets.delete(caller);
    this.buckets.set(caller, { left: allowed ? left - 1 : left, at: now });
    if (this.buckets.size > MOST_CALLERS) this.forgetOldest();
    return allowed ? 0 : Math.max(1, Math.ceil(((1 - left) / this.perMinute) * 60));
  }

  private forgetOldest(): void {
    for (const caller of this.buckets.keys()) {
      this.buckets.delete(caller);
      return;
    }
  }
}

/** @throws AppError TOO_MANY with the time to wait */
export function limitRate(limit: RateLimit, now: () => number = Date.now): RequestHandler {
  return (request, _response, next) => {
    const retryAfterSeconds = limit.take(callerOf(request), now());
    if (retryAfterSeconds === 0) next();
    else next(new AppError({ code: 'TOO_MANY', retryAfterSeconds }));
  };
}

function callerOf(request: Request): string {
  return request.signedIn ? `session ${request.signedIn.sessionId}` : `address ${request.ip ?? 'unknown'}`;
}
