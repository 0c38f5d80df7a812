import { createHash } from 'node:crypto';
import { AppError } from '../common/errors.js';
import type { ThrottleData } from './throttle.data.js';

const WINDOW_MS = 15 * 60_000;
/** Failures allowed within the window: for one account from one address, from one address, for one account. */
const allowed = { pair: 5, address: 40, account: 60 } as const;

/**
 * Slows down guessing of passwords. What failed is kept in the database, so all processes count together and a restart forgets
 * nothing; while it does not answer, nobody comes in.
 */
export class SignInThrottle {
  constructor(private readonly data: ThrottleData) {}

  /**
   * Asked before a password is looked at, and once more when it was right: of guesses that were sent all at once, those that
   * came in after the allowed ones count for nothing.
   * @throws AppError TOO_MANY with the time to wait
   */
  async check(account: string, address: string, now: Date): Promise<void> {
    const limits = keys(account, address).map(([name, key]) => ({ key, most: allowed[name] }));
    const retryAfterSeconds = await this.data.secondsToWait(limits, now, WINDOW_MS);
    if (retryAfterSeconds > 0) throw new AppError({ code: 'TOO_MANY', retryAfterSeconds });
  }

  async failed(account: string, address: string, now: Date): Promise<void> {
    await this.data.addFailure(
      keys(account, address).map(([, key]) => key),
      now,
      WINDOW_MS,
    );
  }

  async succeeded(account: string, address: string): Promise<void> {
    const [[, pair]] = keys(account, address);
    await this.data.forget(pair);
  }
}

/** Hashed: the table tells nobody who tried from where. */
function keys(account: string, address: string) {
  return [
    ['pair', hashed(`pair ${account} ${address}`)],
    ['address', hashed(`address ${address}`)],
    ['account', hashed(`account ${account}`)],
  ] as const;
}

function hashed(key: string): string {
  return createHash('sha256').update(key).digest('hex');
}
