import type { Database } from '../database/database.js';
import type { Role } from './access.js';

export interface Candidate {
  readonly organisation_id: string;
  readonly organisation_name: string;
  readonly member_id: string;
  readonly password_hash: string;
}

export interface SessionRow {
  readonly organisation_id: string;
  readonly organisation_name: string;
  readonly member_id: string;
  readonly name: string;
  readonly email: string;
  readonly role: Role;
  readonly operator_id: string | null;
  readonly last_seen_at: Date;
  readonly expires_at: Date;
}

export class IdentityData {
  constructor(private readonly database: Database) {}

  candidates(email: string): Promise<Candidate[]> {
    return this.database.askDoor<Candidate>('door_members', [email]);
  }

  async session(id: string, at: Date): Promise<SessionRow | null> {
    return (await this.database.askDoor<SessionRow>('door_session', [id, at]))[0] ?? null;
  }

  async openSession(
    organisationId: string,
    session: { id: string; memberId: string; at: Date; expiresAt: Date; userAgent: string },
  ): Promise<void> {
    await this.database.withRecords({ organisationId }, async (records) => {
      await records.session.deleteMany({ where: { memberId: session.memberId, expiresAt: { lt: session.at } } });
      await records.session.create({
        data: {
          organisationId,
          id: session.id,
          memberId: session.memberId,
          createdAt: session.at,
          lastSeenAt: session.at,
          expiresAt: session.expiresAt,
          userAgent: session.userAgent,
        },
      });
    });
  }

  /** Prolongs a session in use, never beyond `longest` after it was opened. */
  async touchSession(organisationId: string, id: string, at: Date, idleMs: number, longestMs: number): Promise<void> {
    await this.database.withOrganisation({ organisationId }, (connection) =>
      connection.query(
        `update sessions set last_seen_at = $3::timestamptz,
           expires_at = least(created_at + $5 * interval '1 millisecond', $3::timestamptz + $4 * interval '1 millisecond')
         where organisation_id = $1 and id = $2 and revoked_at is null`,
        [organisationId, id, at, idleMs, longestMs],
      ),
    );
  }

  async revokeSession(organisationId: string, id: string, at: Date): Promise<void> {
    await this.database.withRecords({ organisationId }, (records) =>
      records.session.updateMany({ where: { id, revokedAt: null }, data: { revokedAt: at } }),
    );
  }

  async operatorName(organisationId: string, id: string): Promise<string | null> {
    return await this.database.withRecords({ organisationId }, async (records) => {
      const operator = await records.operator.findUnique({ where: { organisationId_id: { organisationId, id } } });
      return operator?.name ?? null;
    });
  }
}
