import type { OnModuleDestroy } from '@nestjs/common';
import type { Clock } from '../common/clock.js';
import { limits } from '../common/limits.js';
import type { AppLog } from '../common/logging.js';
import type { Metrics } from '../common/metrics.js';
import type { HouseListener } from '../database/listener.js';
import { authorise, mayDo } from '../identity/access.js';
import type { Actor } from '../identity/access.js';
import type { SignedIn } from '../identity/identity.service.js';
import type { CounterStream } from './counter-stream.js';
import { Follower } from './follower.js';
import type { Ending } from './follower.js';
import type { LiveData } from './live.data.js';

const NET_MS = 1000;
/** So many turns of the net without an answer of the database, and nobody is left to believe that the board is live. */
const SILENT_TURNS = 5;

/**
 * Tells the open boards of this process that their house changed. One question does everything: which sessions are still good
 * and how far has each one's house come; whoever is not in the answer is closed. It is asked when the database says that a
 * house changed, and each second as a net for what was not heard.
 */
export class LiveService implements OnModuleDestroy {
  private readonly followers = new Set<Follower>();
  private readonly stopHearing: () => void;
  private net: NodeJS.Timeout | null = null;
  private silent = 0;
  private closed = false;

  constructor(
    private readonly data: LiveData,
    listener: Pick<HouseListener, 'on'>,
    private readonly clock: Clock,
    private readonly metrics: Metrics,
    private readonly log: AppLog,
  ) {
    this.stopHearing = listener.on((organisationId, causes) => void this.look(organisationId, causes));
  }

  /** Takes in the connection of somebody signed in; anybody else's is closed with the reason, and null. */
  join(signedIn: SignedIn | null, close: (ending: Ending) => void): Follower | null {
    if (signedIn === null || !mayDo(signedIn.actor, 'fleet.read')) {
      close({ code: 4401, reason: 'Signed out' });
      return null;
    }
    const own = [...this.followers].filter((each) => each.sessionId === signedIn.sessionId);
    if (own.length >= limits.socketsPerSession) {
      close({ code: 4429, reason: 'Too many connections of one session' });
      return null;
    }
    const follower = new Follower(signedIn.sessionId, signedIn.actor.organisationId, close);
    this.followers.add(follower);
    this.metrics.sockets.set(this.followers.size);
    this.net ??= setTimeout(() => void this.turn(), NET_MS);
    return follower;
  }

  leave(follower: Follower): void {
    this.followers.delete(follower);
    this.metrics.sockets.set(this.followers.size);
  }

  /** A subscription of somebody connected: the counter at once, then each time it moved. */
  async follow(actor: Actor | null, follower: Follower): Promise<CounterStream> {
    authorise(actor, 'fleet.read');
    const stream = follower.follow();
    await this.look(follower.organisationId);
    return stream;
  }

  async counter(actor: Actor | null): Promise<number> {
    authorise(actor, 'fleet.read');
    return await this.data.counter(actor.organisationId);
  }

  onModuleDestroy(): void {
    this.closed = true;
    this.stopHearing();
    if (this.net !== null) clearTimeout(this.net);
    this.endAll({ code: 1001, reason: 'Going away' });
  }

  private async turn(): Promise<void> {
    await this.look(null);
    this.net = this.closed || this.followers.size === 0 ? null : setTimeout(() => void this.turn(), NET_MS);
  }

  /** Asks for the followers of one house, or of all (null), and tells or closes each. */
  private async look(organisationId: string | null, causes = ''): Promise<void> {
    const asked = [...this.followers].filter(
      (each) => organisationId === null || each.organisationId === organisationId,
    );
    if (asked.length === 0) return;
    try {
      const sessions = [...new Set(asked.map((each) => each.sessionId))];
      const good = new Map((await this.data.followers(sessions, this.clock.now())).map((row) => [row.session_id, row]));
      this.silent = 0;
      let told = 0;
      for (const follower of asked) {
        const row = good.get(follower.sessionId);
        const allowed = row?.organisation_id === follower.organisationId && mayDo(actorOf(row), 'fleet.read');
        if (allowed) {
          follower.push(row.counter);
          told += 1;
        } else this.end(follower, { code: 4401, reason: 'Signed out' });
      }
      if (causes !== '') this.log.event('boards told', { organisation: organisationId, boards: told, causes });
    } catch (error) {
      this.silent += 1;
      if (this.silent === 1) this.log.failure('live', error);
      if (this.silent >= SILENT_TURNS) this.endAll({ code: 1013, reason: 'Try again later' });
    }
  }

  private endAll(ending: Ending): void {
    for (const follower of [...this.followers]) this.end(follower, ending);
  }

  private end(follower: Follower, ending: Ending): void {
    this.leave(follower);
    follower.end(ending);
  }
}

function actorOf(row: {
  readonly organisation_id: string;
  readonly member_id: string;
  readonly name: string;
  readonly role: Actor['role'];
}): Actor {
  return { organisationId: row.organisation_id, memberId: row.member_id, name: row.name, role: row.role };
}
