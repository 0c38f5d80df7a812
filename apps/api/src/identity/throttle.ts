import { AppError } from '../common/errors.js';

const WINDOW_MS = 15 * 60_000;
/** Failures allowed within the window: for one account from one address, from one address, for one account. */
const allowed = { pair: 5, address: 40, account: 60 } as const;

/** Slows down guessing of passwords. Kept in memory: each process counts for itself, and a restart forgets. */
export class SignInThrottle {
  private readonly failures = new Map<string, number[]>();

  /** @throws AppError TOO_MANY with the time to wait */
  check(account: string, address: string, now: number): void {
    for (const [key, limit] of this.keys(account, address)) {
      const recent = this.recent(key, now);
      const oldest = recent[0];
      if (recent.length >= limit && oldest !== undefined) {
        const retryAfterSeconds = Math.max(1, Math.ceil((oldest + WINDOW_MS - now) / 1000));
        throw new AppError({ code: 'TOO_MANY', retryAfterSeconds });
      }
    }
  }

  failed(account: string, address: string, now: number): void {
    for (const [key] of this.keys(account, address)) this.failures.set(key, [...this.recent(key, now), now]);
    if (this.failures.size > 10_000) {
      for (const key of this.failures.keys()) if (this.recent(key, now).length === 0) this.failures.delete(key);
    }
  }

  succeeded(account: string, address: string): void {
    this.failures.delete(`pair ${account} ${address}`);
  }

  private keys(account: string, address: string): readonly (readonly [string, number])[] {
    return [
      [`pair ${account} ${address}`, allowed.pair],
      [`address ${address}`, allowed.address],
      [`account ${account}`, allowed.account],
    ];
  }

  private recent(key: string, now: number): number[] {
    return (this.failures.get(key) ?? []).filter((at) => at > now - WINDOW_MS);
  }
}
