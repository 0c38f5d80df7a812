import type { Profile, Stamp } from '../aircraft/stamp.js';
import { instantOf } from '../common/clock.js';
import type { PageRequest } from '../common/connection.js';
import { Parameters } from '../common/sql.js';
import type { Connection } from '../database/database.js';
import type { Actor } from '../identity/access.js';
import { aircraftConditions } from './ask.js';
import type { AircraftFilter, Moment } from './ask.js';
import { reasonsFor } from './findings.data.js';
import type { Because, WantedReason } from './findings.data.js';
import { judgedOtherwise } from './judging.data.js';
import { summaryColumns, summaryJoins } from './summaries.js';
import type { SummaryRow } from './summaries.js';

interface CellRow {
  readonly profile_id: string;
  readonly aircraft_id: string;
  readonly ready: string;
  readonly standing: string;
  readonly by_means: readonly string[];
  readonly because: readonly string[];
  readonly top_ft: number | null;
  readonly weakest: string | null;
  readonly changes_at: Date | null;
  readonly changes_after: number | null;
  readonly [column: string]: unknown;
}

export interface ProfileVerdict {
  readonly profile: Profile;
  readonly ready: string;
  readonly standing: string;
  readonly by: readonly string[];
  readonly because: readonly Because[];
  readonly topFt: number | null;
  readonly changesAt: string | null;
  readonly hoursLeft: number | null;
  readonly weakestSource: string | null;
  readonly judgingAgain: boolean;
}

export interface ReadyCount {
  readonly profile: Profile;
  readonly yes: number;
  readonly no: number;
  readonly cannotTell: number;
  readonly judgingAgain: number;
}

const readyRank = `case w.ready when 'no' then 0 when 'cannot-tell' then 1 else 2 end`;

/**
 * One window for each aircraft and profile: the worst that the flight meets from its start through its end, with the hours
 * expected at its end. Plain comparisons only, so that the index serves it under the row policy.
 */
function worstWindows(
  profileIds: string,
  organisationId: string,
  moment: Moment,
  add: (value: unknown) => string,
  only = '',
): string {
  const hours = add(moment.hours);
  return `select distinct on (w.profile_id, w.aircraft_id) w.*
    from ready_windows w
    where w.organisation_id = ${organisationId} and w.profile_id = any(${profileIds}) ${only}
      and w.from_at <= ${add(moment.to)} and w.to_at > ${add(moment.from)} and w.above < ${hours} and (w.up_to is null or w.up_to >= ${hours})
    order by w.profile_id, w.aircraft_id, ${readyRank}, case when w.ready = 'yes' then -1 else 1 end * extract(epoch from w.from_at)`;
}

export function isStale(
  row: Pick<SummaryRow, 'rules_version' | 'zones_version' | 'profiles_hash'>,
  stamp: Stamp,
): boolean {
  return row.rules_version !== stamp.rules || row.zones_version !== stamp.zones || row.profiles_hash !== stamp.profiles;
}

export async function boardPage(
  connection: Connection,
  actor: Actor,
  profile: Profile | null,
  filter: AircraftFilter | null | undefined,
  moment: Moment,
  stamp: Stamp,
  page: PageRequest,
): Promise<SummaryRow[]> {
  const parameters = new Parameters();
  const add = (value: unknown): string => parameters.add(value);
  const where = aircraftConditions(actor, filter, add);
  const byReady =
    profile === null || !filter?.ready
      ? ''
      : `and coalesce((select ${staleAsAgain('w.ready', stamp, add)} from (${worstWindows(add([profile.id]), add(actor.organisationId), moment, add, 'and w.aircraft_id = a.id')}) w), 'cannot-tell') = any(${add(filter.ready)})`;
  const [registration, id] = page.after ?? [];
  const after =
    page.after === null
      ? ''
      : `and (a.registration collate "C", a.id collate "C") > (${add(registration)}, ${add(id)})`;
  return await connection.query<SummaryRow>(
    `select ${summaryColumns} from aircraft a ${summaryJoins} where ${where} ${byReady} ${after}
     order by a.registration collate "C", a.id collate "C" limit ${add(page.first + 1)}`,
    parameters.values,
  );
}

/** A yes that rests on other rules, zones or profiles than today's is not counted as one. */
function staleAsAgain(ready: string, stamp: Stamp, add: (value: unknown) => string): string {
  return `case when ${ready} = 'yes' and ${judgedOtherwise(stamp, add)} then 'cannot-tell' else ${ready} end`;
}

/** The cells of the given aircraft, by aircraft id, each in the order of `profiles`. */
export async function cellsFor(
  connection: Connection,
  organisationId: string,
  profiles: readonly Profile[],
  rows: readonly Pick<SummaryRow, 'aircraft_id' | 'rules_version' | 'zones_version' | 'profiles_hash'>[],
  moment: Moment,
  stamp: Stamp,
): Promise<Map<string, ProfileVerdict[]>> {
  const parameters = new Parameters();
  const add = (value: unknown): string => parameters.add(value);
  const cells = await connection.query<CellRow>(
    worstWindows(
      add(profiles.map((each) => each.id)),
      add(organisationId),
      moment,
      add,
      `and w.aircraft_id = any(${add(rows.map((row) => row.aircraft_id))})`,
    ),
    parameters.values,
  );
  const found = new Map(cells.map((cell) => [`${cell.aircraft_id} ${cell.profile_id}`, cell]));
  const reason = await reasonsFor(
    connection,
    organisationId,
    cells.flatMap((cell) => wantedBy(cell, moment)),
  );
  return new Map(
    rows.map((row) => [
      row.aircraft_id,
      profiles.map((profile) =>
        verdictOf(profile, found.get(`${row.aircraft_id} ${profile.id}`), isStale(row, stamp), moment, reason),
      ),
    ]),
  );
}

/** What stops a flight speaks of now; what will end a yes, of when it ends: by the day, or where no day does, by the hours. */
function wantedBy(cell: CellRow, moment: Moment): WantedReason[] {
  const { ready, changes_at: day, changes_after: hours, aircraft_id: aircraftId } = cell;
  const now = { at: moment.to, hours: moment.hours };
  const end = day === null ? { at: moment.to, hours: (hours ?? moment.hours) + 1 } : { ...now, at: instantOf(day) };
  return cell.because.map((key) => ({ aircraftId, key, ...(ready === 'yes' ? end : now) }));
}

function verdictOf(
  profile: Profile,
  cell: CellRow | undefined,
  judgingAgain: boolean,
  moment: Moment,
  reason: (one: WantedReason) => Because,
): ProfileVerdict {
  if (cell === undefined) {
    return {
      profile,
      ready: 'cannot-tell',
      standing: 'not-judged',
      by: [],
      because: [],
      topFt: null,
      changesAt: null,
      hoursLeft: null,
      weakestSource: null,
      judgingAgain,
    };
  }
  return {
    profile,
    ready: judgingAgain && cell.ready === 'yes' ? 'cannot-tell' : cell.ready,
    standing: cell.standing,
    by: cell.by_means,
    because: wantedBy(cell, moment).map(reason),
    topFt: cell.top_ft,
    changesAt: cell.changes_at === null ? null : instantOf(cell.changes_at),
    hoursLeft: cell.changes_after === null ? null : (cell.changes_after - moment.hours) / 100,
    weakestSource: cell.weakest,
    judgingAgain,
  };
}

/** Totals over the whole filter by one grouped query. */
export async function boardCounts(
  connection: Connection,
  actor: Actor,
  profiles: readonly Profile[],
  filter: AircraftFilter | null | undefined,
  moment: Moment,
  stamp: Stamp,
): Promise<{ readonly total: number; readonly counts: ReadyCount[] }> {
  const parameters = new Parameters();
  const add = (value: unknown): string => parameters.add(value);
  // Only the word is counted, so no order is asked for.
  const hours = add(moment.hours);
  const windows = `select w.profile_id, w.aircraft_id, min(${readyRank}) as rank from ready_windows w
    where w.organisation_id = ${add(actor.organisationId)} and w.profile_id = any(${add(profiles.map((each) => each.id))})
      and w.from_at <= ${add(moment.to)} and w.to_at > ${add(moment.from)} and w.above < ${hours} and (w.up_to is null or w.up_to >= ${hours})
    group by 1, 2`;
  const again = judgedOtherwise(stamp, add);
  const rows = await connection.query<{ profile_id: string; ready: string; again: boolean; count: number }>(
    `select p.id as profile_id, (array['no', 'cannot-tell', 'yes'])[1 + coalesce(w.rank, 1)] as ready, ${again} as again, count(*)::int as count
     from aircraft a cross join unnest(${add(profiles.map((each) => each.id))}::text[]) as p(id)
     left join (${windows}) w on w.aircraft_id = a.id and w.profile_id = p.id
     where ${aircraftConditions(actor, filter, add)} group by 1, 2, 3`,
    parameters.values,
  );
  const sum = (profileId: string, test: (row: { ready: string; again: boolean }) => boolean): number =>
    rows.filter((row) => row.profile_id === profileId && test(row)).reduce((total, row) => total + row.count, 0);
  const counts = profiles.map((profile) => ({
    profile,
    yes: sum(profile.id, (row) => row.ready === 'yes' && !row.again),
    no: sum(profile.id, (row) => row.ready === 'no'),
    cannotTell: sum(profile.id, (row) => row.ready === 'cannot-tell'),
    judgingAgain: sum(profile.id, (row) => row.ready === 'yes' && row.again),
  }));
  return { total: profiles[0] === undefined ? 0 : sum(profiles[0].id, () => true), counts };
}
