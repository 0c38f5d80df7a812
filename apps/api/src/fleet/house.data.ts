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
  return [
    ...(await pastWeeks(connection, actor, back, now)),
    ...comingWeeks(await turns(connection, actor, ahead, now), ahead, mondayOf(now)),
  ];
}

/** Each event speaks for its aircraft until the next one: every week that ends in between is answered from it. */
async function pastWeeks(connection: Connection, actor: Actor, back: number, now: Date): Promise<FindingWeekRow[]> {
  return await connection.query<FindingWeekRow>(
    `with spans as (
       select e.at, lead(e.at) over (partition by e.aircraft_id order by e.at, e.id) as until, e.body
       from events e join aircraft a on a.organisation_id = e.organisation_id and a.id = e.aircraft_id
       where e.organisation_id = $1 and e.kind in ('recorded', 'judged-again') and ($4::text is null or a.operator_id = $4)
     )
     select to_char((w.ends - interval '7 days') at time zone 'UTC', 'YYYY-MM-DD') as week, f ->> 0 as effect, count(*)::int as open, false as ahead
     from (select ($2::date - n * 7)::timestamp at time zone 'UTC' as ends from generate_series(0, $3::int - 1) n) w
     join spans s on s.at < w.ends and (s.until is null or s.until >= w.ends)
     cross join lateral jsonb_array_elements(s.body -> 'findings') f
     where (f ->> 1)::timestamptz < w.ends and ((f ->> 2) is null or (f ->> 2)::timestamptz >= w.ends)
     group by 1, 2 order by 1, 2`,
    [actor.organisationId, mondayOf(now), back, actor.operatorId ?? null],
  );
}

interface Turn {
  readonly week: string;
  readonly effect: string;
  readonly by: number;
  readonly [column: string]: unknown;
}

/** How many findings open and close in each week; what is open already counts as opening in the present one. */
async function turns(connection: Connection, actor: Actor, ahead: number, now: Date): Promise<Turn[]> {
  return await connection.query<Turn>(
    `with visible as (
       select f.effect, greatest(f.opens_at, $2::date::timestamp at time zone 'UTC') as opens_at, f.closes_at
       from findings f join aircraft a on a.organisation_id = f.organisation_id and a.id = f.aircraft_id
       where f.organisation_id = $1 and f.above < 0 and f.opens_at < ($2::date + 7 * ($3::int + 1))::timestamp at time zone 'UTC'
         and (f.closes_at is null or f.closes_at >= $2::date::timestamp at time zone 'UTC') and ($4::text is null or a.operator_id = $4)
     )
     select to_char(date_trunc('week', opens_at at time zone 'UTC'), 'YYYY-MM-DD') as week, effect, count(*)::int as by from visible group by 1, 2
     union all
     select to_char(date_trunc('week', closes_at at time zone 'UTC'), 'YYYY-MM-DD'), effect, -count(*)::int from visible
     where closes_at is not null group by 1, 2`,
    [actor.organisationId, mondayOf(now), ahead, actor.operatorId ?? null],
  );
}

/** Running sums of the turns, week by week. */
export function comingWeeks(
  turned: readonly Pick<Turn, 'week' | 'effect' | 'by'>[],
  ahead: number,
  monday: string,
): FindingWeekRow[] {
  const effects = [...new Set(turned.map((each) => each.effect))].sort();
  return Array.from({ length: ahead + 1 }, (_, index) => dayAfter(monday, index * 7)).flatMap((week) =>
    effects.map((effect) => ({
      week,
      effect,
      open: turned
        .filter((each) => each.effect === effect && each.week <= week)
        .reduce((sum, each) => sum + each.by, 0),
      ahead: true,
    })),
  );
}

/** The Monday (UTC) of the week of a moment. */
function mondayOf(moment: Date): string {
  return dayAfter(moment.toISOString().slice(0, 10), -((moment.getUTCDay() + 6) % 7));
}

function dayAfter(day: string, days: number): string {
  return new Date(Date.parse(`${day}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);
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
