import type { Database } from '../database/database.js';

/** What failed, by hashed keys. No organisation is known yet, so it goes through doors of the schema and nothing else reads it. */
export class ThrottleData {
  constructor(private readonly database: Database) {}

  /** @returns 0 unless one of the keys has as many failures within the window as it may have at most */
  async secondsToWait(
    limits: readonly { readonly key: string; readonly most: number }[],
    at: Date,
    windowMs: number,
  ): Promise<number> {
    const keys = limits.map(({ key }) => key);
    const most = limits.map((each) => each.most);
    const [row] = await this.database.askDoor<{ seconds: number }>('door_sign_in_wait', [keys, most, at, windowMs]);
    if (row === undefined) throw new Error('The door gave no answer.');
    return row.seconds;
  }

  async addFailure(keys: readonly string[], at: Date, windowMs: number): Promise<void> {
    await this.database.askDoor('door_sign_in_failed', [keys, at, windowMs]);
  }

  async forget(key: string): Promise<void> {
    await this.database.askDoor('door_sign_in_succeeded', [key]);
  }
}
