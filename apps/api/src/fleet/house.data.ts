import type { FlightConditions } from '@tallywing/rules';
import type { Profile } from '../aircraft/stamp.js';
import type { Connection } from '../database/database.js';
import type { Actor } from '../identity/access.js';
import { summaryColumns, summaryJoins } from './summaries.js';
import type { SummaryRow } from './summaries.js';

export async function wantedProfiles(connection: Connection, organisationId: string): Promise<Profile[]> {
  return await connection.query<{ id: string; name: string; conditions: FlightConditions }>(
    'select id, name, conditions from flight_profiles where organisation_id = $1 and wanted order by sort, id',
    [organisationId],
  );
}

export async function operators(connection: Connection, actor: Actor): Promise<{ id: string; name: string }[]> {
  return await connection.query<{ id: string; name: string }>(
    'select id, name from operators where organisation_id = $1 and ($2::text is null or id = $2) order by name, id',
    [actor.organisationId, actor.operatorId ?? null],
  );
}

export async function bases(
  connection: Connection,
  actor: Actor,
): Promise<{ id: string; name: string; zone: string }[]> {
  return await connection.query<{ id: string; name: string; zone: string }>(
    'select id, name, zone from bases where organisation_id = $1 order by name, id',
    [actor.organisationId],
  );
}

export interface FindingWeekRow {
  readonly week: string;
  readonly effect: string;
  readonly open: number;
  readonly ahead: boolean;
  readonly [column: string]: unknown;
}

/**
 * Findings open at the end of each week. Past weeks from what each recording noted of its own findings, so that later work
 * does not rewrite them; coming weeks from the findings as they stand.
 */
export async function findingWeeks(
  connection: Connection,
  actor: Actor,
  back: number,
  ahead: number,
  now: Date,
): Promise<FindingWeekRow[]> {
  return await connection.query<FindingWeekRow>(
    `with weeks as (
       select w as starts, w + interval '7 days' as ends
       from generate_series(date_trunc('week', $2::timestamptz at time zone 'UTC') - $3 * interval '7 days',
                            date_trunc('week', $2::timestamptz at time zone 'UTC') + $4 * interval '7 days', interval '7 days') w
     ), visible as (select id from aircraft where organisation_id = $1 and ($5::text is null or operator_id = $5))
     select to_char(w.starts, 'YYYY-MM-DD') as week, s.effect, count(*)::int as open, false as ahead
     from weeks w
     cross join lateral (
       select distinct on (e.aircraft_id) e.aircraft_id, e.body from events e
       where e.organisation_id = $1 and e.kind in ('recorded', 'judged-again') and e.at < w.ends at time zone 'UTC' and e.aircraft_id in (select id from visible)
       order by e.aircraft_id, e.at desc, e.id desc) latest
     cross join lateral (
       select f ->> 0 as effect from jsonb_array_elements(latest.body -> 'findings') f
       where (f ->> 1)::timestamptz < w.ends at time zone 'UTC' and ((f ->> 2) is null or (f ->> 2)::timestamptz >= w.ends at time zone 'UTC')) s
     where w.ends at time zone 'UTC' <= $2 group by 1, 2
     union all
     select to_char(w.starts, 'YYYY-MM-DD'), f.effect, count(*)::int, true
     from weeks w join findings f on f.organisation_id = $1 and f.above < 0 and f.opens_at < w.ends at time zone 'UTC'
       and (f.closes_at is null or f.closes_at >= w.ends at time zone 'UTC') and f.aircraft_id in (select id from visible)
     where w.ends at time zone 'UTC' > $2 group by 1, 2
     order by 1, 2`,
    [actor.organisationId, now, back, ahead, actor.operatorId ?? null],
  );
}

export interface RecordedEvent extends SummaryRow {
  readonly at: Date;
  readonly verdicts: readonly { readonly profileId: string; readonly was: string | null; readonly is: string }[];
}

export async function recordedSince(connection: Connection, actor: Actor, since: string): Promise<RecordedEvent[]> {
  return await connection.query<RecordedEvent>(
    `select e.at, coalesce(e.body -> 'recorded' -> 'verdicts', '[]') as verdicts, ${summaryColumns}
     from events e join aircraft a on a.organisation_id = e.organisation_id and a.id = e.aircraft_id ${summaryJoins}
     where e.organisation_id = $1 and e.kind = 'recorded' and e.at >= $2 and ($3::text is null or a.operator_id = $3)
     order by e.at desc, e.id desc limit 500`,
    [actor.organisationId, since, actor.operatorId ?? null],
  );
}
