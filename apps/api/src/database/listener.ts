import pg from 'pg';
import { HOUSE_CHANNEL } from './announcer.js';

const FIRST_WAIT_MS = 200;
const LONGEST_WAIT_MS = 10_000;

/** Is told the organisation, or null when anything may have been missed, and the ids of the requests that changed it. */
type Hearer = (organisationId: string | null, causes: string) => void;

/**
 * Hears from the database which houses changed. One connection of its own, because listening needs a session that lasts: a
 * pool that lends a connection per transaction would lose it. Comes back after a break by itself, waiting longer each time.
 */
export class HouseListener {
  private readonly hearers = new Set<Hearer>();
  private client: pg.Client | null = null;
  private timer: NodeJS.Timeout | null = null;
  private breaks = 0;
  private closed = false;

  constructor(private readonly url: string) {
    void this.connect();
  }

  /** @returns what ends it */
  on(hearer: Hearer): () => void {
    this.hearers.add(hearer);
    return () => this.hearers.delete(hearer);
  }

  async close(): Promise<void> {
    this.closed = true;
    if (this.timer !== null) clearTimeout(this.timer);
    await this.client?.end().catch(() => undefined); // It may be broken already.
  }

  private async connect(): Promise<void> {
    const client = new pg.Client({
      connectionString: this.url,
      connectionTimeoutMillis: 10_000,
      keepAlive: true,
      application_name: 'tallywing listener',
    });
    this.client = client;
    let lost = false;
    const again = (): void => {
      if (lost) return;
      lost = true;
      void client.end().catch(() => undefined); // Gone or going: only its socket is put away.
      this.later();
    };
    client.on('error', again);
    client.on('end', again);
    client.on('notification', ({ payload }) => {
      const [house = '', causes = ''] = (payload ?? '').split(' ');
      this.tell(house === '' ? null : house, causes);
    });
    try {
      await client.connect();
      await client.query(`listen ${HOUSE_CHANNEL}`);
      this.breaks = 0;
      this.tell(null, '');
    } catch {
      again(); // While the database is away, requests say so; this only comes back when it does.
    }
  }

  private later(): void {
    if (this.closed) return;
    const wait = Math.min(LONGEST_WAIT_MS, FIRST_WAIT_MS * 2 ** this.breaks) * (0.5 + Math.random() / 2);
    this.breaks += 1;
    this.timer = setTimeout(() => void this.connect(), wait);
  }

  private tell(organisationId: string | null, causes: string): void {
    for (const hearer of this.hearers) hearer(organisationId, causes);
  }
}
