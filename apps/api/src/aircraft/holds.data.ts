import type { Connection } from '../database/database.js';
import type { Actor } from '../identity/access.js';

/** Jobs in work whose hold somebody lifted by hand: the work ends without a release. */
export async function stopJobs(
  connection: Connection,
  actor: Actor,
  jobIds: readonly string[],
  at: Date,
  reason = 'its hold was lifted by hand',
): Promise<void> {
  if (jobIds.length === 0) return;
  await connection.query(
    `update jobs set state = 'stopped', ended_at = $3, ended_because = $4, updated_at = $3
     where organisation_id = $1 and id = any($2) and state = 'in-work'`,
    [actor.organisationId, jobIds, at, reason],
  );
}

export interface LiftRow {
  readonly hold_id: string;
  readonly reason: string;
  readonly by: string;
  readonly at: Date;
  readonly [column: string]: unknown;
}

/** By whom and why holds were lifted, from the entries of the record; the last lift of each counts. */
export async function liftsOf(connection: Connection, actor: Actor, aircraftId: string): Promise<LiftRow[]> {
  return await connection.query<LiftRow>(
    `select distinct on (c.body ->> 'holdId') c.body ->> 'holdId' as hold_id, c.body ->> 'reason' as reason,
       coalesce(m.name, c.member_id) as by, c.recorded_at as at
     from changes c left join members m on m.organisation_id = c.organisation_id and m.id = c.member_id
     where c.organisation_id = $1 and c.aircraft_id = $2 and c.kind = 'hold.lift'
     order by c.body ->> 'holdId', c.seq desc`,
    [actor.organisationId, aircraftId],
  );
}

export async function jobTitles(
  connection: Connection,
  actor: Actor,
  ids: readonly string[],
): Promise<Map<string, string>> {
  const rows =
    ids.length === 0
      ? []
      : await connection.query<{ id: string; title: string }>(
          'select id, title from jobs where organisation_id = $1 and id = any($2)',
          [actor.organisationId, ids],
        );
  return new Map(rows.map((row) => [row.id, row.title]));
}
