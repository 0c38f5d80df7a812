import { instantOf } from '../common/clock.js';
import type { PageRequest } from '../common/connection.js';
import { Parameters } from '../common/sql.js';
import type { Connection } from '../database/database.js';
import type { Actor } from '../identity/access.js';
import { aircraftConditions } from './ask.js';
import type { AircraftFilter } from './ask.js';
import { summaryColumns, summaryJoins, summaryOf } from './summaries.js';
import type { SummaryRow } from './summaries.js';

interface Load {
  readonly slot: string;
  readonly cycle: string | null;
  readonly effective: Date | null;
  readonly expires: Date | null;
}

export interface DatabaseRow extends SummaryRow {
  readonly unit_id: string;
  readonly unit_name: string;
  readonly database: string;
  readonly loads: readonly {
    readonly slot: string;
    readonly cycle: string | null;
    readonly effective: string | null;
    readonly expires: string | null;
  }[];
}

/** One row for each database of each unit, with what is loaded in it. */
export async function databases(
  connection: Connection,
  actor: Actor,
  filter: AircraftFilter | null | undefined,
  page: PageRequest,
): Promise<DatabaseRow[]> {
  const parameters = new Parameters();
  const add = (value: unknown): string => parameters.add(value);
  const where = `${aircraftConditions(actor, filter, add)} and u.organisation_id = ${add(actor.organisationId)}`;
  const after =
    page.after === null
      ? ''
      : `and (a.registration collate "C", a.id collate "C", u.unit_id collate "C", u.database collate "C") > (${page.after.map(add).join(', ')})`;
  return await connection.query<DatabaseRow>(
    `select u.unit_id, min(u.unit_name) as unit_name, u.database,
       jsonb_agg(jsonb_build_object('slot', u.slot, 'cycle', u.cycle, 'effective', u.effective_at, 'expires', u.expires_at) order by u.slot) as loads,
       ${summaryColumns}
     from unit_databases u join aircraft a on a.organisation_id = u.organisation_id and a.id = u.aircraft_id ${summaryJoins}
     where ${where} ${after}
     group by u.unit_id, u.database, a.organisation_id, a.id, o.name, b.name, b.zone
     order by a.registration collate "C", a.id collate "C", u.unit_id collate "C", u.database collate "C" limit ${add(page.first + 1)}`,
    parameters.values,
  );
}

export const databaseKey = (row: DatabaseRow): string[] => [
  row.registration,
  row.aircraft_id,
  row.unit_id,
  row.database,
];

export async function countDatabases(
  connection: Connection,
  actor: Actor,
  filter: AircraftFilter | null | undefined,
): Promise<number> {
  const parameters = new Parameters();
  const add = (value: unknown): string => parameters.add(value);
  const rows = await connection.query<{ count: number }>(
    `select count(*)::int as count from (select distinct u.aircraft_id, u.unit_id, u.database
     from unit_databases u join aircraft a on a.organisation_id = u.organisation_id and a.id = u.aircraft_id
     where ${aircraftConditions(actor, filter, add)} and u.organisation_id = ${add(actor.organisationId)}) as each`,
    parameters.values,
  );
  return rows[0]?.count ?? 0;
}

export function currencyNode(row: DatabaseRow, at: string) {
  const loads: Load[] = row.loads.map((each) => ({
    slot: each.slot,
    cycle: each.cycle,
    effective: each.effective === null ? null : new Date(each.effective),
    expires: each.expires === null ? null : new Date(each.expires),
  }));
  const moment = new Date(`${at.slice(0, 16)}:00Z`);
  const states = loads.map((load) => stateOf(load, moment));
  const state =
    (['current', 'cannot-tell', 'expired', 'not-yet'] as const).find((each) => states.includes(each)) ?? 'cannot-tell';
  const node = (slot: string) => {
    const load = loads.find((each) => each.slot === slot);
    return load === undefined ? null : loadNode(row, load);
  };
  return {
    aircraft: summaryOf(row),
    unitId: row.unit_id,
    unitName: row.unit_name,
    database: row.database,
    state,
    loaded: node('this'),
    next: node('next'),
  };
}

function stateOf(load: Load, moment: Date): 'current' | 'expired' | 'not-yet' | 'cannot-tell' {
  if (load.effective !== null && load.effective > moment) return 'not-yet';
  if (load.expires === null) return 'cannot-tell';
  if (load.expires <= moment) return 'expired';
  return load.effective === null ? 'cannot-tell' : 'current';
}

function loadNode(row: DatabaseRow, load: Load) {
  return {
    id: `${row.aircraft_id}:${row.unit_id}:${row.database}:${load.slot}`,
    unitId: row.unit_id,
    unitName: row.unit_name,
    database: row.database,
    slot: load.slot,
    cycle: load.cycle,
    effective: load.effective === null ? null : instantOf(load.effective),
    expires: load.expires === null ? null : instantOf(load.expires),
    aircraft: summaryOf(row),
  };
}

/** Every load of one aircraft, as the aircraft screen lists them. */
export function loadNodes(row: DatabaseRow) {
  return row.loads.map((each) =>
    loadNode(row, {
      slot: each.slot,
      cycle: each.cycle,
      effective: each.effective === null ? null : new Date(each.effective),
      expires: each.expires === null ? null : new Date(each.expires),
    }),
  );
}
