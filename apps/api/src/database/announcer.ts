import type pg from 'pg';
import { correlationId } from '../common/logging.js';

/** The channel on which processes tell each other that a house changed. The payload is the organisation and the ids of the requests that did it. */
export const HOUSE_CHANNEL = 'tallywing_house';
const GATHER_MS = 50;
/** More than these are not named: a payload has its limit, and one is enough to find the rest by. */
const MOST_CAUSES = 20;

/**
 * Tells all processes which houses changed, after the transactions that changed them: telling within a commit would make all
 * commits of the server queue for one lock. What changes within a moment of each other is told once.
 */
export class Announcer {
  private readonly waiting = new Map<string, Set<string>>();
  private timer: NodeJS.Timeout | null = null;
  private closed = false;

  constructor(private readonly pool: Pick<pg.Pool, 'query'>) {}

  add(organisationId: string): void {
    if (this.closed) return;
    const causes = this.waiting.get(organisationId) ?? new Set();
    if (causes.size < MOST_CAUSES) causes.add(correlationId());
    this.waiting.set(organisationId, causes);
    this.timer ??= setTimeout(() => void this.tell(), GATHER_MS);
  }

  /** Tells what still waits, then nothing more. */
  async close(): Promise<void> {
    this.closed = true;
    if (this.timer !== null) clearTimeout(this.timer);
    await this.tell();
  }

  private async tell(): Promise<void> {
    this.timer = null;
    const houses = [...this.waiting].map(([house, causes]) => `${house} ${[...causes].join(',')}`);
    this.waiting.clear();
    if (houses.length === 0) return;
    try {
      await this.pool.query('select pg_notify($1, house) from unnest($2::text[]) house', [HOUSE_CHANNEL, houses]);
    } catch {
      // Nothing is lost: the counters stand in the tables, and every process looks at them each second.
    }
  }
}
