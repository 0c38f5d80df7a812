import type { Connection } from '../database/database.js';

/**
 * Notes what the passing of time changed on these aircraft up to `to`: findings that opened and stop something, and answers that
 * became others. Read from the verdicts as they stand, and only what they foresaw: what a judgement found open or answered
 * otherwise at its own moment came with the work. So it is asked before verdicts are replaced, and by the worker each minute; noted
 * twice it stands once.
 */
export async function noteEdges(
  connection: Connection,
  organisationId: string,
  aircraftIds: readonly string[],
  to: Date,
): Promise<void> {
  await connection.query(
    `insert into time_notices (organisation_id, aircraft_id, at, kind, subject, revision, noticed_at, body)
     select a.organisation_id, a.id, e.at, e.kind, e.subject, a.revision, $3, e.body
     from aircraft a join house_watches h on h.organisation_id = a.organisation_id
     cross join lateral (
       select f.opens_at as at, 'opened' as kind, f.rule_id || '|' || f.subject as subject,
         jsonb_build_object('subjectName', f.subject_name, 'messageId', f.message_id, 'data', f.data) as body
       from findings f
       where f.organisation_id = $1 and f.aircraft_id = a.id and f.above < 0 and f.effect in ('stops-aircraft', 'stops-operation')
         and f.opens_at > greatest(a.judged_at, h.noticed_to) and f.opens_at <= $3
         and not exists (select 1 from findings b where b.organisation_id = $1 and b.aircraft_id = a.id and b.above < 0
           and b.rule_id = f.rule_id and b.subject = f.subject and b.outcome = f.outcome and b.closes_at = f.opens_at)
       union all
       select w.from_at, 'turned', w.profile_id, jsonb_build_object('was', b.ready, 'is', w.ready)
       from ready_windows w
       join ready_windows b on b.organisation_id = $1 and b.aircraft_id = a.id and b.profile_id = w.profile_id and b.above < 0
         and b.to_at = w.from_at and b.ready <> w.ready
       where w.organisation_id = $1 and w.aircraft_id = a.id and w.above < 0
         and w.from_at > greatest(a.judged_at, h.noticed_to) and w.from_at <= $3
     ) e
     where a.organisation_id = $1 and a.id = any($2)
     on conflict do nothing`,
    [organisationId, aircraftIds, to],
  );
}

/** Aircraft of which anything that was foreseen begins or ends in the span: what their boards show is different after it. */
export async function withEdge(
  connection: Connection,
  organisationId: string,
  after: Date,
  to: Date,
): Promise<readonly string[]> {
  const rows = await connection.query<{ id: string }>(
    `select distinct a.id from aircraft a join (
       select aircraft_id, opens_at as at from findings where organisation_id = $1 and above < 0 and opens_at > $2 and opens_at <= $3
       union all
       select aircraft_id, closes_at from findings where organisation_id = $1 and above < 0 and closes_at > $2 and closes_at <= $3
       union all
       select aircraft_id, from_at from ready_windows where organisation_id = $1 and above < 0 and from_at > $2 and from_at <= $3
     ) e on e.aircraft_id = a.id
     where a.organisation_id = $1 and e.at > a.judged_at`,
    [organisationId, after, to],
  );
  return rows.map((row) => row.id);
}

/**
 * How far the house was looked at, locked until the transaction ends; null where another worker is at it. A house that was never
 * looked at begins now.
 */
export async function lookedUntil(connection: Connection, organisationId: string, now: Date): Promise<Date | null> {
  await connection.query(
    'insert into house_watches (organisation_id, noticed_to) values ($1, $2) on conflict do nothing',
    [organisationId, now],
  );
  const [row] = await connection.query<{ noticed_to: Date }>(
    'select noticed_to from house_watches where organisation_id = $1 for update skip locked',
    [organisationId],
  );
  return row?.noticed_to ?? null;
}

export async function lookUntil(connection: Connection, organisationId: string, to: Date): Promise<void> {
  await connection.query('update house_watches set noticed_to = $2 where organisation_id = $1', [organisationId, to]);
}
