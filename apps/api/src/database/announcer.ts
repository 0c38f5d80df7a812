import type pg from 'pg';

/** The channel on which processes tell each other that a house changed. The payload is the organisation, nothing else. */
export const HOUSE_CHANNEL = 'tallywing_house';
const GATHER_MS = 50;

/**
 * Tells all processes which houses changed, after the transactions that changed them: telling within a commit would make all
 * commits of the server queue for one lock. What changes within a moment of each other is told once.
 */
export class Announcer {
  private readonly waiting = new Set<string>();
  private timer: NodeJS.Timeout | null = null;
  private closed = false;

  constructor(private readonly pool: Pick<pg.Pool, 'query'>) {}

  add(organisationId: string): void {
    if (this.closed) return;
    this.waiting.add(organisationId);
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
    const houses = [...this.waiting];
    this.waiting.clear();
    if (houses.length === 0) return;
    try {
      await this.pool.query('select pg_notify($1, house) from unnest($2::text[]) house', [HOUSE_CHANNEL, houses]);
    } catch {
      // Nothing is lost: the counters stand in the tables, and every process looks at them each second.
    }
  }
}
