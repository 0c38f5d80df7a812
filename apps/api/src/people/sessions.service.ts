import type { Clock } from '../common/clock.js';
import { instantOf } from '../common/clock.js';
import { AppError } from '../common/errors.js';
import type { Database } from '../database/database.js';
import { changeHouse } from '../house/house-entry.data.js';
import { authorise, mayDo } from '../identity/access.js';
import type { Actor } from '../identity/access.js';
import type { SignedIn } from '../identity/identity.service.js';
import { personById } from './people.data.js';
import { endSession, endSessionsOf, liveSessions, sessionName } from './sessions.data.js';
import type { SessionRow } from './sessions.data.js';

/** Where people are signed in. Everybody sees and ends their own; a manager anybody's. */
export class SessionsService {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
  ) {}

  async mine(signedIn: SignedIn | null) {
    const actor = signedIn?.actor ?? null;
    authorise(actor, 'sessions.own');
    const rows = await this.live(actor, actor.memberId);
    return rows.map((row) => nodeOf(row, signedIn));
  }

  async all(signedIn: SignedIn | null) {
    const actor = signedIn?.actor ?? null;
    authorise(actor, 'people.write');
    const rows = await this.live(actor, null);
    return rows.map((row) => nodeOf(row, signedIn));
  }

  /** @throws AppError NOT_FOUND also for a session that is somebody else's and not theirs to see */
  async end(actor: Actor | null, id: string): Promise<boolean> {
    authorise(actor, 'sessions.own');
    return await changeHouse(this.database, this.clock, actor, async (connection, now) => {
      const rows = await liveSessions(connection, actor.organisationId, null, now);
      const found = rows.find((row) => row.id === id);
      if (!found || (found.person_id !== actor.memberId && !mayDo(actor, 'people.write')))
        throw new AppError({ code: 'NOT_FOUND', what: 'session', field: 'id' });
      await endSession(connection, actor.organisationId, id, now);
      return { answer: true, entry: ended({ id: found.person_id, name: found.person_name }, 1) };
    });
  }

  /** @returns how many were ended */
  async endOthers(signedIn: SignedIn | null): Promise<number> {
    const actor = signedIn?.actor ?? null;
    authorise(actor, 'sessions.own');
    const here = sessionName(signedIn?.sessionId ?? '');
    return await changeHouse(this.database, this.clock, actor, async (connection, now) => {
      const count = await endSessionsOf(connection, actor.organisationId, actor.memberId, now, here);
      return { answer: count, entry: count === 0 ? null : ended({ id: actor.memberId, name: actor.name }, count) };
    });
  }

  async endAllOf(actor: Actor | null, personId: string): Promise<number> {
    authorise(actor, 'people.write');
    return await changeHouse(this.database, this.clock, actor, async (connection, now) => {
      const person = await personById(connection, actor.organisationId, personId);
      if (person === null) throw new AppError({ code: 'NOT_FOUND', what: 'person', field: 'personId' });
      const count = await endSessionsOf(connection, actor.organisationId, personId, now);
      return { answer: count, entry: count === 0 ? null : ended(person, count) };
    });
  }

  private async live(actor: Actor, personId: string | null): Promise<SessionRow[]> {
    return await this.database.withOrganisation(actor, (connection) =>
      liveSessions(connection, actor.organisationId, personId, this.clock.now()),
    );
  }
}

function ended(person: { readonly id: string; readonly name: string }, count: number) {
  return {
    kind: 'person.sessions',
    subject: { kind: 'person' as const, id: person.id, name: person.name },
    before: null,
    after: { sessionsEnded: count },
  };
}

function nodeOf(row: SessionRow, signedIn: SignedIn | null) {
  return {
    id: row.id,
    person: { id: row.person_id, name: row.person_name },
    userAgent: row.user_agent,
    since: instantOf(row.created_at),
    lastSeen: instantOf(row.last_seen_at),
    here: row.id === sessionName(signedIn?.sessionId ?? ''),
  };
}
