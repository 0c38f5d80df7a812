import type { Connection } from '../database/database.js';

export interface SessionRow {
  /** The start of the hash: names the session and opens nothing. */
  readonly id: string;
  readonly person_id: string;
  readonly person_name: string;
  readonly user_agent: string;
  readonly created_at: Date;
  readonly last_seen_at: Date;
  readonly [column: string]: unknown;
}

const NAMED_BY = 16;

/** Names a session by the start of its hash, as the rows below do. */
export function sessionName(hash: string): string {
  return hash.slice(0, NAMED_BY);
}

/** Sessions that let somebody in at this moment, of one person or of all, latest seen first. */
export async function liveSessions(
  connection: Connection,
  organisationId: string,
  personId: string | null,
  now: Date,
): Promise<SessionRow[]> {
  return await connection.query<SessionRow>(
    `select left(s.id, ${NAMED_BY}) as id, s.member_id as person_id, m.name as person_name, s.user_agent, s.created_at, s.last_seen_at
     from sessions s join members m on m.organisation_id = s.organisation_id and m.id = s.member_id
     where s.organisation_id = $1 and ($2::text is null or s.member_id = $2) and s.revoked_at is null and s.expires_at > $3 and m.active
     order by s.last_seen_at desc, s.id limit 1000`,
    [organisationId, personId, now],
  );
}

export async function endSession(
  connection: Connection,
  organisationId: string,
  id: string,
  now: Date,
): Promise<boolean> {
  const rows = await connection.query(
    `update sessions set revoked_at = $3
     where organisation_id = $1 and left(id, ${NAMED_BY}) = $2 and revoked_at is null returning 1`,
    [organisationId, id, now],
  );
  return rows.length > 0;
}

/** @returns how many were open; `but` is the name of one that stays */
export async function endSessionsOf(
  connection: Connection,
  organisationId: string,
  personId: string,
  now: Date,
  but: string | null = null,
): Promise<number> {
  const rows = await connection.query<{ live: boolean }>(
    `update sessions set revoked_at = $3
     where organisation_id = $1 and member_id = $2 and revoked_at is null and ($4::text is null or left(id, ${NAMED_BY}) <> $4)
     returning expires_at > $3 as live`,
    [organisationId, personId, now, but],
  );
  return rows.filter(({ live }) => live).length;
}
