import type { PageRequest } from '../common/connection.js';
import { Parameters } from '../common/sql.js';
import type { Connection } from '../database/database.js';
import { aircraftConditions } from '../fleet/ask.js';
import type { AircraftFilter } from '../fleet/ask.js';
import { summaryColumns, summaryJoins } from '../fleet/summaries.js';
import type { SummaryRow } from '../fleet/summaries.js';
import type { Actor } from '../identity/access.js';

export interface GapRow extends SummaryRow {
  readonly open_flights: number;
  readonly open_answers: number;
}

/** Aircraft with what the read tables cannot tell of them at this moment. */
export async function gapRows(
  connection: Connection,
  actor: Actor,
  filter: AircraftFilter | null | undefined,
  now: string,
  page: PageRequest,
): Promise<GapRow[]> {
  const parameters = new Parameters();
  const add = (value: unknown): string => parameters.add(value);
  const counted = countedAircraft(actor, filter, now, add);
  const [flights, answers, registration, id] = page.after ?? [];
  const after =
    page.after === null
      ? ''
      : `where (-open_flights, -open_answers, registration collate "C", aircraft_id collate "C")
           > (${add(-Number(flights))}::int, ${add(-Number(answers))}::int, ${add(registration)}, ${add(id)})`;
  return await connection.query<GapRow>(
    `select * from (${counted}) counted ${after}
     order by -open_flights, -open_answers, registration collate "C", aircraft_id collate "C" limit ${add(page.first + 1)}`,
    parameters.values,
  );
}

export const gapKey = (row: GapRow): string[] => [
  String(row.open_flights),
  String(row.open_answers),
  row.registration,
  row.aircraft_id,
];

export async function gapTotals(
  connection: Connection,
  actor: Actor,
  filter: AircraftFilter | null | undefined,
  now: string,
): Promise<{ readonly total: number; readonly told: number; readonly openAnswers: number }> {
  const parameters = new Parameters();
  const counted = countedAircraft(actor, filter, now, (value) => parameters.add(value));
  const [row] = await connection.query<{ total: number; told: number; open: number }>(
    `select count(*)::int as total, (count(*) filter (where open_flights = 0))::int as told,
       coalesce(sum(open_answers), 0)::int as open from (${counted}) counted`,
    parameters.values,
  );
  return { total: row?.total ?? 0, told: row?.told ?? 0, openAnswers: row?.open ?? 0 };
}

function countedAircraft(
  actor: Actor,
  filter: AircraftFilter | null | undefined,
  now: string,
  add: (value: unknown) => string,
): string {
  const where = aircraftConditions(actor, filter, add);
  const own = add(actor.organisationId);
  const at = add(now);
  return `select ${summaryColumns},
      (select count(*)::int from ready_windows w
         join flight_profiles p on p.organisation_id = w.organisation_id and p.id = w.profile_id and p.wanted
       where w.organisation_id = ${own} and w.aircraft_id = a.id and w.ready = 'cannot-tell'
         and w.from_at <= ${at} and w.to_at > ${at} and w.above < 0) as open_flights,
      (select count(distinct (f.rule_id, f.subject))::int from findings f
       where f.organisation_id = ${own} and f.aircraft_id = a.id and f.outcome = 'cannot-tell'
         and f.opens_at <= ${at} and (f.closes_at is null or f.closes_at > ${at}) and f.above < 0) as open_answers
    from aircraft a ${summaryJoins} where ${where}`;
}
