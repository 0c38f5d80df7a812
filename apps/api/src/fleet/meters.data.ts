import { metersAt, policyAt, readingGoodForDays } from '@tallywing/rules';
import type { Dossier, Policy } from '@tallywing/rules';
import { refuseNewer } from '../aircraft/aircraft.data.js';
import type { PageRequest } from '../common/connection.js';
import { Parameters } from '../common/sql.js';
import type { Connection } from '../database/database.js';
import type { Actor } from '../identity/access.js';
import { aircraftConditions } from './ask.js';
import type { AircraftFilter } from './ask.js';
import { summaryColumns, summaryJoins, summaryOf } from './summaries.js';
import type { SummaryRow } from './summaries.js';

export interface MeterRow extends SummaryRow {
  readonly dossier_schema: number;
  readonly meters: Dossier['meters'];
}

/** One row for each aircraft, with the one part of its record that the sheet needs. */
export async function meterRows(
  connection: Connection,
  actor: Actor,
  filter: AircraftFilter | null | undefined,
  page: PageRequest,
): Promise<MeterRow[]> {
  const parameters = new Parameters();
  const add = (value: unknown): string => parameters.add(value);
  const where = aircraftConditions(actor, filter, add);
  const after =
    page.after === null
      ? ''
      : `and (a.registration collate "C", a.id collate "C") > (${page.after.map(add).join(', ')})`;
  return await connection.query<MeterRow>(
    `select a.dossier_schema, a.meters, ${summaryColumns} from aircraft a ${summaryJoins} where ${where} ${after}
     order by a.registration collate "C", a.id collate "C" limit ${add(page.first + 1)}`,
    parameters.values,
  );
}

export const meterKey = (row: MeterRow): string[] => [row.registration, row.aircraft_id];

export async function countAircraft(
  connection: Connection,
  actor: Actor,
  filter: AircraftFilter | null | undefined,
): Promise<number> {
  const parameters = new Parameters();
  const where = aircraftConditions(actor, filter, (value) => parameters.add(value));
  const rows = await connection.query<{ count: number }>(
    `select count(*)::int as count from aircraft a where ${where}`,
    parameters.values,
  );
  return rows[0]?.count ?? 0;
}

export function meterNode(row: MeterRow, policies: readonly Policy[], instant: string) {
  refuseNewer(row);
  const house = policyAt(policies, 'reading-age', instant, row.base_zone ?? 'UTC')?.body.days ?? null;
  const { definitions, readings, timeInService, utilisation } = row.meters;
  const now = metersAt(row, 0, false, house);
  return {
    aircraft: summaryOf(row),
    revision: row.revision,
    hoursPerMonth: utilisation.perMonth === null ? null : utilisation.perMonth / 100,
    readingGoodForDays: readingGoodForDays(row, house),
    ownReadingAge: utilisation.readingGoodForDays,
    meters: definitions.map(({ id, name, kind, perFlightHour, offset }) => ({
      id,
      name,
      kind,
      timeInService: timeInService === id,
      perFlightHour: perFlightHour / 1000,
      offset: offset / 100,
      hours: readings[id] === undefined ? null : readings[id].value / 100,
      asOf: readings[id]?.asOf ?? null,
      goodBefore: now[id]?.goodBefore ?? null,
    })),
  };
}
